using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>When a feed arrives at one of its places.</summary>
/// <param name="At">The point that the patch decides.</param>
/// <param name="End">The end of the chain behind it, to which time is counted; the point itself when nothing hangs on it.</param>
/// <param name="Milliseconds">From the bus to that end, as far as latencies are stated.</param>
internal readonly record struct FeedArrival(PointIndex At, PointIndex End, double Milliseconds)
{
    /// <summary>The places of a feed at which it arrives, in the order of its <c>to</c>.</summary>
    public static List<FeedArrival> Of(RuleContext context, ResolvedShow show, FeedNode feed, ref bool isPartial)
    {
        var latency = SignalLatency.Of(context, show);
        var all = new List<FeedArrival>(feed.Model.To.Count);
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            if (context.Demand(feed, entry).Existing is { IsNone: false } at)
            {
                var sum = latency.To(at, ref isPartial) + latency.Beyond(at, ref isPartial, out var end);
                all.Add(new FeedArrival(at, end, sum));
            }
        }

        return all;
    }

    /// <summary>
    /// Takes out what cannot be compared: beside a place where something plays, an output with nothing on it says nothing, since what plays there adds its
    /// own time.
    /// </summary>
    public static void KeepComparable(RuleContext context, List<FeedArrival> arrivals)
    {
        if (arrivals.Exists(arrival => arrival.IsHeard(context)))
        {
            arrivals.RemoveAll(arrival => !arrival.IsHeard(context));
        }
    }

    /// <summary>True where something plays or takes the feed on, and not at an output with nothing on it.</summary>
    public bool IsHeard(RuleContext context) =>
        End != At || EndKinds.IsLoudspeaker(context.DeviceOf(At), context.GroupOf(At)) || EndKinds.IsEar(context.DeviceOf(At), context.GroupOf(At));

    /// <summary>The place as a message names it.</summary>
    public string Name(RuleContext context) => At == End ? $"{context.Address(At)}" : $"{context.Address(End)}, behind {context.Address(At)},";
}
