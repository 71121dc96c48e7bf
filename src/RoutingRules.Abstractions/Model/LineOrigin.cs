namespace RoutingRules.Model;

/// <summary>Where a line enters: pinned inputs, any of some devices and zones, or a signal born in a device.</summary>
public sealed record LineOrigin
{
    /// <summary>Pinned inputs; several when an analogue split feeds several boxes.</summary>
    public ValueList<PointRange> At { get; init; }

    /// <summary>Any of these devices.</summary>
    public ValueList<Id<Device>> Devices { get; init; }

    /// <summary>Any device in these zones; together with devices a union.</summary>
    public ValueList<Id<Zone>> Zones { get; init; }

    /// <summary>A signal born on the network or in a device, such as a wireless rack or a player.</summary>
    public PointRange? Source { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
