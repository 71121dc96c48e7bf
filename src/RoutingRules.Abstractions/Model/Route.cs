namespace RoutingRules.Model;

/// <summary>Inside one device, a sink takes its signal from a source, position by position.</summary>
public sealed record Route
{
    /// <summary>The sources; null clears the sinks.</summary>
    public PointRange? From { get; init; }

    /// <summary>The sinks, as many as sources.</summary>
    public required PointRange To { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
