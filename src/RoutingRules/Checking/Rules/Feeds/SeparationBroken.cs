using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports feeds that share what they were to keep apart.</summary>
/// <remarks>Entries are compared k-th with k-th, as the assigner does. One finding for each wish; a wish written at both feeds is told once.</remarks>
public sealed class SeparationBroken : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3015",
            Name = "separation-broken",
            Title = "Feeds that were to stay apart share something",
            Family = RuleFamily.Feeds,
            Severity = Severity.Error,
            Checks = "Feeds that name each other as separate stand on different devices, hang on different supplies or cross different links, as they say.",
            Why = "Somebody wrote down that these two must not fail together; as patched, they do.",
            Remedy = "Move one of the two to another device, supply or link, or take the wish out of the feed.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        Dictionary<Id<Feed>, FeedNode>? byId = null;
        var told = new HashSet<(Id<Feed>, Id<Feed>, SeparationBy)>();
        var ways = new FeedPaths(context);
        foreach (var feed in context.Feeds)
        {
            for (var i = 0; i < feed.Model.SeparateFrom.Count; i++)
            {
                context.LookedAt();
                var wish = feed.Model.SeparateFrom[i];
                byId ??= FeedPairs.ById(context);
                if (wish.Feed == feed.Model.Id || !byId.TryGetValue(wish.Feed, out var other))
                {
                    continue;
                }

                if (wish.By == SeparationBy.Power && Unstated(context, feed, other) is { } unstated)
                {
                    context.CouldNotDecide(
                        $"'{feed.DisplayName}' and '{other.DisplayName}' were to stay apart by power, but nothing says what supplies '{unstated.DisplayName}'."
                    );
                }

                if (
                    Shared(context, ways, feed, other, wish.By) is { } what
                    && told.Add(feed.Model.Id.CompareTo(wish.Feed) < 0 ? (feed.Model.Id, wish.Feed, wish.By) : (wish.Feed, feed.Model.Id, wish.By))
                )
                {
                    Report(context, feed, other, wish.By, what, i);
                }
            }
        }
    }

    /// <summary>A device at which two feeds stand and of which no supply is stated; null when all are stated.</summary>
    private static DeviceNode? Unstated(RuleContext context, FeedNode feed, FeedNode other)
    {
        foreach (var (one, second) in FeedPairs.Each(context, feed, other))
        {
            foreach (var demand in (ReadOnlySpan<DemandNode>)[one, second])
            {
                if (context.DeviceOf(demand.Existing) is { Model.Power.IsEmpty: true } device)
                {
                    return device;
                }
            }
        }

        return null;
    }

    private static string? Shared(RuleContext context, FeedPaths ways, FeedNode feed, FeedNode other, SeparationBy by)
    {
        foreach (var (one, second) in FeedPairs.Each(context, feed, other))
        {
            var what = by switch
            {
                SeparationBy.Device => ways.Device(one, second) is { } device ? $"stand on '{device.DisplayName}'" : null,
                SeparationBy.Power => ways.Power(one, second) is { } supply ? $"hang on supply '{supply}'" : null,
                _ => ways.Links(one, second) is { Count: > 0 } links
                    ? $"cross {(links.Count == 1 ? "link" : "links")} {Wording.Names(links.ConvertAll(link => link.Model.Id.Value))}"
                    : null,
            };
            if (what is not null)
            {
                return what;
            }
        }

        return null;
    }

    private static void Report(RuleContext context, FeedNode feed, FeedNode other, SeparationBy by, string what, int index)
    {
        var isFirst = feed.Model.Id.CompareTo(other.Model.Id) < 0;
        context.Report(
            $"'{feed.DisplayName}' and '{other.DisplayName}' were to stay apart by {by.ToString().ToLowerInvariant()}, but both {what}.",
            $"/feeds/{feed.Index}/separateFrom/{index}",
            Entity.Of("feed", (isFirst ? feed : other).Model.Id),
            Entity.Of("feed", (isFirst ? other : feed).Model.Id),
            Entity.Of("by", by.ToString().ToLowerInvariant())
        );
    }
}
