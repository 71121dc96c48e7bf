namespace RoutingRules.Model;

/// <summary>Points kept free for somebody else.</summary>
public sealed record ReservedPoints
{
    /// <summary>The points.</summary>
    public required PointRange At { get; init; }

    /// <summary>For whom or what.</summary>
    public string? Reason { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
