using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.ChannelMaps;

/// <summary>What came of putting a channel map into a show.</summary>
public sealed record MapImportResult
{
    /// <summary>The show; null when there are problems.</summary>
    public Show? Show { get; init; }

    /// <summary>What makes it from the show before, in order.</summary>
    public ValueList<ShowEdit> Edits { get; init; }

    /// <summary>The sinks that take something else, in the order of the map.</summary>
    public ValueList<MapMove> Moves { get; init; }

    /// <summary>What the device cannot do, each a sentence with its place; empty when the map was taken.</summary>
    public ValueList<string> Problems { get; init; }
}
