using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>The sets that feeds belong to.</summary>
internal static class FeedSets
{
    /// <summary>The sets with at least two feeds, by first appearance; feeds in document order.</summary>
    public static List<(string Name, List<FeedNode> Feeds)> Of(RuleContext context) => context.Shared(Find);

    private static List<(string Name, List<FeedNode> Feeds)> Find(RuleContext context)
    {
        var sets = new List<(string Name, List<FeedNode> Feeds)>();
        var positions = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.Set is not { } name)
            {
                continue;
            }

            if (!positions.TryGetValue(name, out var position))
            {
                positions.Add(name, position = sets.Count);
                sets.Add((name, []));
            }

            sets[position].Feeds.Add(feed);
        }

        sets.RemoveAll(set => set.Feeds.Count < 2);
        return sets;
    }

    /// <summary>The set and its feeds as entities, the feeds in ordinal order.</summary>
    public static Entity[] Entities(string name, IEnumerable<FeedNode> feeds) =>
        [Entity.Of("set", name), .. feeds.OrderBy(feed => feed.Model.Id).Select(feed => Entity.Of("feed", feed.Model.Id))];

    /// <summary>What people call a feed's share of its set: the part, or else the feed.</summary>
    public static string PartName(FeedNode feed) => feed.Model.Part ?? $"'{feed.DisplayName}'";
}
