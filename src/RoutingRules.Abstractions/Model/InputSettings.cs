namespace RoutingRules.Model;

/// <summary>Phantom and gain of a run of inputs.</summary>
public sealed record InputSettings
{
    /// <summary>The inputs.</summary>
    public required PointRange At { get; init; }

    /// <summary>Whether phantom power is switched on; null when nothing was said.</summary>
    public bool? Phantom { get; init; }

    /// <summary>The console that sets the gain.</summary>
    public Id<Device>? GainOwner { get; init; }

    /// <summary>Consoles that follow with digital trim.</summary>
    public ValueList<Id<Device>> GainFollowers { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
