namespace RoutingRules.Model;

/// <summary>A text shown at a point.</summary>
public sealed record PointLabel
{
    /// <summary>The point or points.</summary>
    public required PointRange At { get; init; }

    /// <summary>The text.</summary>
    public required string Text { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
