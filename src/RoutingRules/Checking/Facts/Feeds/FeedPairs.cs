using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Feeds that speak of each other.</summary>
internal static class FeedPairs
{
    /// <summary>The feeds by id; of several with one id the first.</summary>
    public static Dictionary<Id<Feed>, FeedNode> ById(RuleContext context) => context.Shared(FindIds);

    private static Dictionary<Id<Feed>, FeedNode> FindIds(RuleContext context)
    {
        var byId = new Dictionary<Id<Feed>, FeedNode>();
        foreach (var feed in context.Feeds)
        {
            byId.TryAdd(feed.Model.Id, feed);
        }

        return byId;
    }

    /// <summary>The entries of two feeds that belong together, k-th with k-th, where both are served.</summary>
    public static IEnumerable<(DemandNode One, DemandNode Other)> Each(RuleContext context, FeedNode one, FeedNode other)
    {
        for (var entry = 0; entry < one.Model.To.Count && entry < other.Model.To.Count; entry++)
        {
            var first = context.Demand(one, entry);
            var second = context.Demand(other, entry);
            if (!first.Existing.IsNone && !second.Existing.IsNone)
            {
                yield return (first, second);
            }
        }
    }
}
