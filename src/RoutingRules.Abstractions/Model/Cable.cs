namespace RoutingRules.Model;

/// <summary>A cable, or a run of cables, from outputs to inputs of another device, position by position.</summary>
public sealed record Cable
{
    /// <summary>The outputs.</summary>
    public required PointRange From { get; init; }

    /// <summary>The inputs, as many as outputs.</summary>
    public required PointRange To { get; init; }

    /// <summary>The way of a loom or multicore it uses.</summary>
    public string? Way { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
