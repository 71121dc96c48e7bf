using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>Where a demand is placed.</summary>
public sealed record Placement
{
    /// <summary>The demand: <c>feed-id/1</c> for an entry of a feed, the id for a line.</summary>
    public required string Demand { get; init; }

    /// <summary>The points: an output run of a feed, an input run of a line.</summary>
    public required PointRange At { get; init; }

    /// <summary>True when the document pins it.</summary>
    public bool IsPinned { get; init; }

    /// <summary>True when it was served there before.</summary>
    public bool IsKept { get; init; }
}
