namespace RoutingRules.Resolving;

/// <summary>A run of points that do not work or are reserved.</summary>
public sealed class MarkedPoint
{
    /// <summary>First point.</summary>
    public required PointIndex First { get; init; }

    /// <summary>How many points.</summary>
    public required int Width { get; init; }

    /// <summary>True for points that do not work, false for reserved ones.</summary>
    public required bool IsDead { get; init; }

    /// <summary>Position in <c>unavailable</c> or <c>reserved</c>, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>The reason given; null when none was.</summary>
    public string? Reason { get; init; }
}
