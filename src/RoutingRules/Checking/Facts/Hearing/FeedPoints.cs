using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Hearing;

/// <summary>Where feeds are served or pinned.</summary>
internal static class FeedPoints
{
    /// <summary>Each point at which a feed is served or pinned.</summary>
    public static IEnumerable<(PointIndex Point, FeedNode Feed)> Of(RuleContext context)
    {
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                var demand = context.Demand(feed, entry);
                var run =
                    !demand.Existing.IsNone ? demand.Existing
                    : demand is { IsPinned: true, Allowed.Count: > 0 } ? demand.Allowed[0]
                    : PointIndex.None;
                for (var position = 0; !run.IsNone && position < demand.Width; position++)
                {
                    yield return (run + position, feed);
                }
            }
        }
    }
}
