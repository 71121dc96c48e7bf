using RoutingRules.Model;

namespace RoutingRules.Planning.Comparing;

/// <summary>A feed's destination or a line that is new, gone, renamed, or somewhere else than before.</summary>
public sealed record DemandChange
{
    /// <summary>The id of the feed or line, with the number of the entry after a slash where a feed has several: <c>sub/2</c>.</summary>
    public required string Demand { get; init; }

    /// <summary>What people call it.</summary>
    public required string Name { get; init; }

    /// <summary>True for a feed, false for a line.</summary>
    public required bool IsFeed { get; init; }

    /// <summary>What became of it.</summary>
    public required DemandFate Fate { get; init; }

    /// <summary>The id of its feed or line before; null unless it was renamed.</summary>
    public string? Was { get; init; }

    /// <summary>The points that served it before; null when none did.</summary>
    public PointRange? Before { get; init; }

    /// <summary>The points that serve it after; null when none do.</summary>
    public PointRange? After { get; init; }
}
