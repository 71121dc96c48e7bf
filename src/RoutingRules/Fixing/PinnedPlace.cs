using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>A place that was written down for a demand.</summary>
public sealed record PinnedPlace
{
    /// <summary>The demand: <c>feed-id/1</c> for the first entry of a feed, the id for a line.</summary>
    public required string Demand { get; init; }

    /// <summary>The points.</summary>
    public required PointRange At { get; init; }
}
