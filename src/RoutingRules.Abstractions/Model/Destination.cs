namespace RoutingRules.Model;

/// <summary>One place a feed shall reach: either pinned points or any of some devices and zones.</summary>
public sealed record Destination
{
    /// <summary>The pinned sink: an output, a cabled input, a receive slot or a channel.</summary>
    public PointRange? At { get; init; }

    /// <summary>Any of these devices.</summary>
    public ValueList<Id<Device>> Devices { get; init; }

    /// <summary>Any device in these zones; together with devices a union.</summary>
    public ValueList<Id<Zone>> Zones { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
