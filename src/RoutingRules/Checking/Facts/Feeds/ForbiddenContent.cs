using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Where talkback, click and comms arrive that must not, and which buses carry nothing else.</summary>
internal static class ForbiddenContent
{
    /// <summary>True for a bus that feeds name, all of them for talkback, click or comms.</summary>
    public static bool IsPrivateBus(Intentions intentions, PointIndex bus)
    {
        var feeds = intentions.FeedsOf(bus);
        foreach (var (_, feed) in feeds)
        {
            if (!FeedRoles.IsPrivate(feed.Model.Role))
            {
                return false;
            }
        }

        return feeds.Length > 0;
    }

    /// <summary>The private source that arrives where a protected feed is pinned and missing; none when there is none.</summary>
    public static PointIndex At(RuleContext context, Intentions intentions, DemandNode demand)
    {
        for (
            var position = 0;
            demand is { IsPinned: true, Existing.IsNone: true, Feed: { } feed, Allowed.Count: > 0 }
                && FeedRoles.IsForAudience(feed.Model.Role)
                && position < demand.Width;
            position++
        )
        {
            var origin = context.Origin(demand.Allowed[0] + position);
            if (!origin.IsNone && IsPrivateBus(intentions, origin))
            {
                return origin;
            }
        }

        return PointIndex.None;
    }
}
