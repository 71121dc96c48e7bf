using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Resilience;

/// <summary>Feeds that must not fall silent together: each set, all mains, all that are in-ear by their role or by where they end.</summary>
internal sealed class FeedGroups
{
    private FeedGroups(string kind, string name, string title, List<FeedNode> feeds)
    {
        Kind = kind;
        Name = name;
        Title = title;
        Feeds = feeds;
    }

    /// <summary><c>set</c> or <c>role</c>.</summary>
    public string Kind { get; }

    /// <summary>The set, or the role.</summary>
    public string Name { get; }

    /// <summary>What people call the group.</summary>
    public string Title { get; }

    /// <summary>Its feeds, in document order; at least two.</summary>
    public List<FeedNode> Feeds { get; }

    /// <summary>True for all in-ear feeds.</summary>
    public bool IsInEar => Kind == "role" && Name == FeedRole.InEar.Value;

    /// <summary>True for all mains, or for a set of mains.</summary>
    public bool IsMain => Feeds.TrueForAll(feed => feed.Model.Role == FeedRole.Main);

    /// <summary>The groups: sets by first appearance, then mains where they are not one set, then in-ear feeds.</summary>
    public static List<FeedGroups> Of(RuleContext context) => context.Shared(Find);

    private static List<FeedGroups> Find(RuleContext context)
    {
        var groups = new List<FeedGroups>();
        foreach (var (name, feeds) in FeedSets.Of(context))
        {
            groups.Add(new FeedGroups("set", name, $"set '{name}'", feeds));
        }

        var ears = EarFeeds.Of(context);
        AddRole(context, groups, FeedRole.Main, "all mains", static feed => feed.Model.Role == FeedRole.Main);
        AddRole(context, groups, FeedRole.InEar, "all in-ear feeds", ears.IsInEar);
        return groups;
    }

    private static void AddRole(RuleContext context, List<FeedGroups> groups, FeedRole role, string title, Func<FeedNode, bool> isMeant)
    {
        var feeds = new List<FeedNode>();
        foreach (var feed in context.Feeds)
        {
            if (isMeant(feed))
            {
                feeds.Add(feed);
            }
        }

        if (feeds.Count > 1 && !groups.Exists(group => group.Feeds.Count == feeds.Count && group.Feeds.TrueForAll(feeds.Contains)))
        {
            groups.Add(new FeedGroups("role", role.Value, title, feeds));
        }
    }
}
