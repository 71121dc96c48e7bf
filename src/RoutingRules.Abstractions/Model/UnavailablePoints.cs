namespace RoutingRules.Model;

/// <summary>Points that do not work.</summary>
public sealed record UnavailablePoints
{
    /// <summary>The points.</summary>
    public required PointRange At { get; init; }

    /// <summary>What is wrong with them.</summary>
    public string? Reason { get; init; }

    /// <summary>Since when.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
