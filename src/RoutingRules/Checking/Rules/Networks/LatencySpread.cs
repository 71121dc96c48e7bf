using System.Globalization;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports feeds, and sets of feeds, that arrive at their places at different times.</summary>
/// <remarks>
/// One finding for each feed with several entries, and one for each set of which no feed was told already; entities are the feed or the set and the places that are late. Delay,
/// recording and broadcast feeds do not count: nobody hears them beside the others.
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
        var latency = SignalLatency.Of(context, subject);
        var limit = context.Value(MaximumMilliseconds) + Tolerance;
        var told = new HashSet<int>();
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.To.Count > 1 && IsHeard(feed))
            {
                var arrivals = new Arrivals();
                arrivals.Add(context, latency, feed);
                context.LookedAt(arrivals.Count > 1 ? 1 : 0);
                if (arrivals.Spread > limit)
                {
                    told.Add(feed.Index);
                    Report(
                        context,
                        $"Feed '{feed.DisplayName}' arrives",
                        arrivals,
                        $"/feeds/{feed.Index}",
                        [Entity.Of("feed", feed.Model.Id), .. arrivals.Late(context, limit)]
                    );
                }
            }
        }

        foreach (var (name, feeds) in FeedSets.Of(context))
        {
            var arrivals = new Arrivals();
            foreach (var feed in feeds)
            {
                if (IsHeard(feed))
                {
                    arrivals.Add(context, latency, feed);
                }
            }

            context.LookedAt(arrivals.Count > 1 ? 1 : 0);
            if (arrivals.Spread > limit && !feeds.Exists(feed => told.Contains(feed.Index)))
            {
                Report(
                    context,
                    $"The parts of set '{name}' arrive",
                    arrivals,
                    $"/feeds/{feeds[0].Index}",
                    [Entity.Of("set", name), .. arrivals.Late(context, limit)]
                );
            }
        }
    }

    private static bool IsHeard(FeedNode feed) =>
        feed.Model.Role != FeedRole.Delay && feed.Model.Role != FeedRole.Record && feed.Model.Role != FeedRole.Broadcast;

    private static void Report(RuleContext context, string what, Arrivals arrivals, string pointer, Entity[] entities) =>
        context.Report(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{what} at {context.Address(arrivals.Last)} {arrivals.Spread:0.##} ms later than at {context.Address(arrivals.First)}."
                    + $"{(arrivals.IsPartial ? " Parts whose latency is not stated count as 0." : "")}"
            ),
            pointer,
            entities
        );

    private sealed class Arrivals
    {
        private readonly List<(PointIndex At, double Sum)> all = [];
        private double least = double.PositiveInfinity;
        private double most = double.NegativeInfinity;
        private bool isPartial;

        public int Count => all.Count;

        public double Spread => most > least ? most - least : 0;

        public PointIndex First { get; private set; }

        public PointIndex Last { get; private set; }

        public bool IsPartial => isPartial;

        /// <summary>The places at which it arrives too long after the earliest.</summary>
        public IEnumerable<Entity> Late(RuleContext context, double limit) =>
            all.Where(arrival => arrival.Sum - least > limit).Select(arrival => Entity.Of("late", context.Address(arrival.At))).Distinct();

        public void Add(RuleContext context, SignalLatency latency, FeedNode feed)
        {
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                var at = context.Demand(feed, entry).Existing;
                if (at.IsNone)
                {
                    continue;
                }

                var sum = latency.To(at, ref isPartial) + latency.Beyond(at, ref isPartial);
                all.Add((at, sum));
                (least, First) = sum < least ? (sum, at) : (least, First);
                (most, Last) = sum > most ? (sum, at) : (most, Last);
            }
        }
    }
}
