using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.ChannelMaps;

/// <summary>What one channel of an output of a channel map takes. Numbers count from 0, as in the standards; points of shows count from 1.</summary>
public sealed record MapChannel
{
    /// <summary>The group of sinks: an output of the map.</summary>
    public required Id<PortGroup> Output { get; init; }

    /// <summary>The channel of the output, from 0.</summary>
    public required int Channel { get; init; }

    /// <summary>The group of sources, an input of the map; none for silence.</summary>
    public Id<PortGroup> Input { get; init; }

    /// <summary>The channel of the input, from 0; 0 for silence.</summary>
    public int InputChannel { get; init; }
}
