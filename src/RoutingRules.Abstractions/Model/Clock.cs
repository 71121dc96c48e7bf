namespace RoutingRules.Model;

/// <summary>A clock domain.</summary>
public sealed record Clock
{
    /// <summary>The id that networks name.</summary>
    public required Id<Clock> Id { get; init; }

    /// <summary>Sample rate in hertz, 8000 to 384000.</summary>
    public required int SampleRate { get; init; }

    /// <summary>The device that leads the clock.</summary>
    public required Id<Device> Leader { get; init; }

    /// <summary>The device that takes over.</summary>
    public Id<Device>? Backup { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
