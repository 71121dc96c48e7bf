using RoutingRules.Model;

namespace RoutingRules.Profiles;

/// <summary>A numbered run of points of one kind on a device.</summary>
public sealed record PortGroup
{
    /// <summary>The id that addresses name.</summary>
    public required Id<PortGroup> Id { get; init; }

    /// <summary>What the points are.</summary>
    public required PortKind Kind { get; init; }

    /// <summary>How many points, 1 to 65535; null when the count depends on the sample rate.</summary>
    public int? Count { get; init; }

    /// <summary>How many points at which sample rate.</summary>
    public ValueList<RateCount> CountByRate { get; init; }

    /// <summary>The connector.</summary>
    public Connector? Connector { get; init; }

    /// <summary>How many channels share one connector, from 1.</summary>
    public int ChannelsPerConnector { get; init; } = 1;

    /// <summary>What the panel prints at each point, first to last; empty when it prints the number.</summary>
    public ValueList<string> PanelLabels { get; init; }

    /// <summary>The level or kind of signal.</summary>
    public SignalLevel? Level { get; init; }

    /// <summary>Whether the connectors are isolated by transformers.</summary>
    public bool Isolated { get; init; }

    /// <summary>Whether the inputs can supply phantom power.</summary>
    public bool Phantom { get; init; }

    /// <summary>Whether odd and even neighbours are pairs in hardware.</summary>
    public bool Paired { get; init; }

    /// <summary>Whether somebody hears with earpieces or headphones what arrives here, as at a pack on a cable or a headphone amplifier.</summary>
    public bool InEar { get; init; }

    /// <summary>How many slots travel together, from 1; null means 1.</summary>
    public int? BlockSize { get; init; }

    /// <summary>The network jack these slots live on, for a digital multicore whose link is the stream.</summary>
    public GroupRange? Carrier { get; init; }

    /// <summary>Whether a sample rate converter sits at the group.</summary>
    public bool RateConverter { get; init; }

    /// <summary>Which network jacks are one switch.</summary>
    public ValueList<BridgedJacks> Bridged { get; init; }

    /// <summary>How many characters the device shows, from 1.</summary>
    public int? LabelLength { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
