using System.Globalization;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports feeds, and sets of feeds, that arrive at their places at different times.</summary>
/// <remarks>
/// One finding for each feed with several entries, and one for each set of which no feed was told already; entities are the feed or the set and the places that
/// are late. Delay,
/// recording and broadcast feeds do not count: nobody hears them beside the others, nor outputs with nothing plugged in beside others at which something
/// plays. Time is
/// counted to the end of the chain behind a place, and the message names it.
/// </remarks>
public sealed class LatencySpread : Rule<ResolvedShow>
{
    private const double Tolerance = 1e-9;

    private static readonly RuleOption MaximumMilliseconds = new()
    {
        Name = "maximumMilliseconds",
        Doc = "How far apart in time one feed, or the parts of one set, may arrive at their places.",
        Default = 1,
        Minimum = 0.01,
        Maximum = 1000,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5011",
            Name = "latency-spread",
            Title = "Arrives at different times",
            Family = RuleFamily.Network,
            Severity = Severity.Warning,
            Checks = "A feed arrives at all its places, and the parts of a set arrive at theirs, within 1 ms as far as latencies are stated.",
            Why = "Loudspeakers that play one signal at different times cancel each other in places and pull the image to one side.",
            Remedy = "Bring them there in the same way, or delay the earlier ones by the difference.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
            Options = [MaximumMilliseconds],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var told = new HashSet<int>();
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.To.Count > 1 && IsHeard(feed))
            {
                var isPartial = false;
                var arrivals = FeedArrival.Of(context, subject, feed, ref isPartial);
                if (Check(context, arrivals, isPartial, $"Feed '{feed.DisplayName}' arrives", feed.Index, Entity.Of("feed", feed.Model.Id), true))
                {
                    told.Add(feed.Index);
                }
            }
        }

        foreach (var (name, feeds) in FeedSets.Of(context))
        {
            var isPartial = false;
            var arrivals = new List<FeedArrival>();
            foreach (var feed in feeds)
            {
                if (IsHeard(feed))
                {
                    arrivals.AddRange(FeedArrival.Of(context, subject, feed, ref isPartial));
                }
            }

            var isNew = !feeds.Exists(feed => told.Contains(feed.Index));
            Check(context, arrivals, isPartial, $"The parts of set '{name}' arrive", feeds[0].Index, Entity.Of("set", name), isNew);
        }
    }

    /// <summary>True when the arrivals are too far apart.</summary>
    private static bool Check(RuleContext context, List<FeedArrival> arrivals, bool isPartial, string what, int feed, Entity entity, bool isNew)
    {
        FeedArrival.KeepComparable(context, arrivals);
        context.LookedAt(arrivals.Count > 1 ? 1 : 0);
        if (arrivals.Count < 2)
        {
            return false;
        }

        var first = arrivals.MinBy(arrival => arrival.Milliseconds);
        var last = arrivals.MaxBy(arrival => arrival.Milliseconds);
        var limit = context.Value(MaximumMilliseconds) + Tolerance;
        if (last.Milliseconds - first.Milliseconds <= limit)
        {
            return false;
        }

        if (isNew)
        {
            var late = arrivals.Where(arrival => arrival.Milliseconds - first.Milliseconds > limit);
            context.Report(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{what} at {last.Name(context)} {last.Milliseconds - first.Milliseconds:0.##} ms later than at {first.Name(context).TrimEnd(',')}."
                        + $"{(isPartial ? " Parts whose latency is not stated count as 0." : "")}"
                ),
                $"/feeds/{feed}",
                [entity, .. late.Select(arrival => Entity.Of("late", context.Address(arrival.At))).Distinct()]
            );
        }

        return true;
    }

    private static bool IsHeard(FeedNode feed) =>
        feed.Model.Role != FeedRole.Delay && feed.Model.Role != FeedRole.Record && feed.Model.Role != FeedRole.Broadcast;
}
