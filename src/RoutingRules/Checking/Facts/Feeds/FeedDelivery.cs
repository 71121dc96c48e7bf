using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Decides for each entry of a feed whether it arrives, and if not, in which way it fails.</summary>
internal static class FeedDelivery
{
    /// <summary>The entries of a feed in order; none when its source cannot be followed.</summary>
    /// <param name="context">The context.</param>
    /// <param name="feed">The feed.</param>
    /// <param name="told">Destinations that other rules explain; they stand as unknown.</param>
    public static IReadOnlyList<FeedEntry> Entries(RuleContext context, FeedNode feed, ExplainedByOtherRule told)
    {
        if (!FeedPlaces.IsFollowable(context, feed))
        {
            return [];
        }

        // Pins first, whatever the order: what arrives at a pin is not taken for a destination that is left open.
        var entries = new FeedEntry[feed.Model.To.Count];
        var used = new List<PointIndex>();
        for (var i = 0; i < entries.Length; i++)
        {
            var demand = context.Demand(feed, i);
            if (!demand.Existing.IsNone)
            {
                entries[i] = new FeedEntry { Demand = demand, State = EntryState.Served };
            }
            else if (IsSharedMix(context, feed, demand))
            {
                entries[i] = new FeedEntry { Demand = demand, State = EntryState.Served };
            }
            else if (told.IsTold(demand))
            {
                entries[i] = new FeedEntry { Demand = demand, State = EntryState.Unknown };
            }
            else if (feed.Model.To[i].At is { } at)
            {
                entries[i] = Pinned(context, feed, demand, at);
                entries[i] = IsTold(entries, entries[i]) ? new FeedEntry { Demand = demand, State = EntryState.Unknown } : entries[i];
                used.Add(entries[i].Left);
                used.Add(entries[i].Right);
            }
        }

        for (var i = 0; i < entries.Length; i++)
        {
            entries[i] ??= Chosen(context, feed, context.Demand(feed, i), used);
        }

        return entries;
    }

    /// <summary>
    /// True when the place that an entry names carries its bus already for another feed of that bus: two people on one mix. Where the place is left open,
    /// only in-ear feeds share one, since loudspeakers stand apart.
    /// </summary>
    private static bool IsSharedMix(RuleContext context, FeedNode feed, DemandNode demand)
    {
        for (var i = 0; (demand.IsPinned ? i < 1 : feed.Model.Role == FeedRole.InEar) && i < demand.Allowed.Count; i++)
        {
            if (
                context.DemandAt(demand.Allowed[i]) is { Feed: { } other } serving
                && other != feed
                && serving.Existing == demand.Allowed[i]
                && (other.Source, other.Width) == (feed.Source, feed.Width)
                && (demand.IsPinned || other.Model.Role == FeedRole.InEar)
            )
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when an earlier entry names the same points and half of it, or all of it in the wrong way, arrives there.</summary>
    private static bool IsTold(FeedEntry?[] entries, FeedEntry entry) =>
        entry.State is EntryState.Half or EntryState.Swapped or EntryState.Split
        && Array.Exists(entries, other => other is not null && other != entry && other.At == entry.At && other.State == entry.State);

    private static FeedEntry Pinned(RuleContext context, FeedNode feed, DemandNode demand, PointRange at)
    {
        if (
            at.Width != feed.Width
            || context.Find(at, out var first) != ConnectionState.Connected
            || context.GroupOf(first).Kind is PortKind.Source or PortKind.Network
        )
        {
            return new FeedEntry { Demand = demand, State = EntryState.Unknown };
        }

        // What arrives at the point without a single deciding output (looms through other devices) still arrives.
        if (feed.Width == 1)
        {
            var arrives = demand.Allowed.Count == 0 && context.IsFedBy(first, feed.Source);
            return new FeedEntry
            {
                Demand = demand,
                State = arrives ? EntryState.Served : EntryState.Missing,
                At = first,
            };
        }

        var left = feed.Source;
        var right = feed.Source + 1;
        var leftAt =
            context.IsFedBy(first, left) ? first
            : context.IsFedBy(first + 1, left) ? first + 1
            : PointIndex.None;
        var rightAt =
            context.IsFedBy(first + 1, right) ? first + 1
            : context.IsFedBy(first, right) ? first
            : PointIndex.None;
        var isInOrder = leftAt == first && rightAt == first + 1;
        var state =
            leftAt.IsNone && rightAt.IsNone ? EntryState.Missing
            : leftAt.IsNone || rightAt.IsNone ? EntryState.Half
            : !isInOrder ? EntryState.Swapped
            : demand.Allowed.Count == 0 ? EntryState.Split
            : EntryState.Missing;
        return state == EntryState.Split
            ? new FeedEntry
            {
                Demand = demand,
                State = state,
                Left = Feeder(context, leftAt),
                Right = Feeder(context, rightAt),
                At = first,
            }
            : new FeedEntry
            {
                Demand = demand,
                State = state,
                Left = leftAt,
                Right = rightAt,
                At = first,
            };
    }

    private static PointIndex Feeder(RuleContext context, PointIndex point) => context.Via(point) == HopKind.Cable ? context.Upstream(point) : point;

    private static FeedEntry Chosen(RuleContext context, FeedNode feed, DemandNode demand, List<PointIndex> used)
    {
        var to = feed.Model.To[demand.Entry];
        if (!FeedPlaces.Resolves(context, to) || (demand.Allowed.Count == 0 && FeedPlaces.HasUnknownDevice(context, to)))
        {
            return new FeedEntry { Demand = demand, State = EntryState.Unknown };
        }

        if (feed.Width == 1)
        {
            return new FeedEntry { Demand = demand, State = EntryState.Missing };
        }

        var lefts = Free(context, demand, feed.Source, used);
        var rights = Free(context, demand, feed.Source + 1, used);
        var (left, right, state) = Join(context, demand, lefts, rights);
        used.Add(left);
        used.Add(right);
        return new FeedEntry
        {
            Demand = demand,
            State = state,
            Left = left,
            Right = right,
        };
    }

    private static List<PointIndex> Free(RuleContext context, DemandNode demand, PointIndex source, List<PointIndex> used)
    {
        var points = FeedPlaces.Reached(context, source);
        points.RemoveAll(point => !FeedPlaces.Allows(demand, point) || context.DemandAt(point) is not null || used.Contains(point));
        return points;
    }

    private static (PointIndex Left, PointIndex Right, EntryState State) Join(
        RuleContext context,
        DemandNode demand,
        List<PointIndex> lefts,
        List<PointIndex> rights
    )
    {
        if (lefts.Count == 0 || rights.Count == 0)
        {
            return (
                lefts.Count == 0 ? PointIndex.None : lefts[0],
                rights.Count == 0 ? PointIndex.None : rights[0],
                lefts.Count == rights.Count ? EntryState.Missing : EntryState.Half
            );
        }

        foreach (var right in rights)
        {
            if (FeedPlaces.AllowsRun(demand, right) && lefts.BinarySearch(right + 1) >= 0)
            {
                return (right + 1, right, EntryState.Swapped);
            }
        }

        foreach (var left in lefts)
        {
            foreach (var right in rights)
            {
                if (context.DeviceOf(left) == context.DeviceOf(right))
                {
                    return (left, right, EntryState.Split);
                }
            }
        }

        return (lefts[0], rights[0], EntryState.Split);
    }
}
