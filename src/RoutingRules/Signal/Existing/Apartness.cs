using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Signal.Existing;

/// <summary>Which demands must stay apart, and whether two of them do at given runs of the patch as it stands.</summary>
/// <remarks><c>separateFrom</c> compares the k-th entry with the k-th, both ways; <c>spread</c> keeps all entries of a feed on different devices.</remarks>
internal sealed class Apartness
{
    private readonly ResolvedShow show;
    private readonly List<(int Other, SeparationBy By)>?[] others;

    private Apartness(ResolvedShow show)
    {
        this.show = show;
        others = new List<(int, SeparationBy)>?[show.Demands.Count];
    }

    /// <summary>What a show asks to be kept apart; null when it asks for nothing.</summary>
    public static Apartness? Of(ResolvedShow show)
    {
        var found = new Apartness(show);
        foreach (var feed in show.Feeds)
        {
            found.AddSpread(feed);
            foreach (var separation in feed.Model.SeparateFrom)
            {
                found.AddSeparation(feed, separation);
            }
        }

        return Array.TrueForAll(found.others, list => list is null) ? null : found;
    }

    /// <summary>What a demand must stay apart from, by position in demand order.</summary>
    public IReadOnlyList<(int Other, SeparationBy By)> Of(int demand) => others[demand] ?? (IReadOnlyList<(int, SeparationBy)>)[];

    /// <summary>True when two demands at two runs stay as far apart as they must.</summary>
    public bool Holds(DemandNode one, PointIndex at, DemandNode other, PointIndex otherAt)
    {
        foreach (var (index, by) in Of(one.Index))
        {
            if (index == other.Index && Share(by, one, at, other, otherAt))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when what stands on two devices shares, by the devices alone, what it must not; links depend on streams.</summary>
    public static bool Meet(SeparationBy by, DeviceNode device, DeviceNode other) =>
        by switch
        {
            SeparationBy.Device => device == other,
            SeparationBy.Power => SharePower(device.Model.Power, other.Model.Power),
            _ => false,
        };

    private static bool SharePower(ValueList<Id<PowerSource>> one, ValueList<Id<PowerSource>> other)
    {
        foreach (var supply in one)
        {
            if (other.Contains(supply))
            {
                return true;
            }
        }

        return false;
    }

    private bool Share(SeparationBy by, DemandNode one, PointIndex at, DemandNode other, PointIndex otherAt) =>
        by == SeparationBy.Link ? Links(one, at).Overlaps(Links(other, otherAt)) : Meet(by, show.Graph.DeviceOf(at), show.Graph.DeviceOf(otherAt));

    /// <summary>The links of the trees of all streams on the way to a run.</summary>
    private HashSet<int> Links(DemandNode demand, PointIndex at)
    {
        var links = new HashSet<int>();
        for (var position = 0; position < demand.Width; position++)
        {
            foreach (var point in show.Graph.Upward(at + position))
            {
                if (point == demand.Feed!.Source + position)
                {
                    break;
                }

                if (show.Graph.Via(point) == HopKind.Stream)
                {
                    AddTree(show.Streams[show.Graph.ViaIndex(point)], links);
                }
            }
        }

        return links;
    }

    private void AddTree(StreamNode stream, HashSet<int> links)
    {
        var network = show.Network.IndexOf(stream.Model.Network);
        foreach (var receiver in stream.Receivers)
        {
            if (network >= 0 && !receiver.At.IsNone)
            {
                links.UnionWith(show.Network.Path(network, show.Graph.DeviceOf(stream.From), show.Graph.DeviceOf(receiver.At)) ?? []);
            }
        }
    }

    private void AddSpread(FeedNode feed)
    {
        for (var entry = 0; feed.Model.Spread && entry < feed.Model.To.Count; entry++)
        {
            for (var other = entry + 1; other < feed.Model.To.Count; other++)
            {
                Add(feed.FirstDemand + entry, feed.FirstDemand + other, SeparationBy.Device);
            }
        }
    }

    private void AddSeparation(FeedNode feed, Separation separation)
    {
        var other = show.Feeds.FirstOrDefault(candidate => candidate.Model.Id == separation.Feed);
        for (var entry = 0; other is not null && other != feed && entry < Math.Min(feed.Model.To.Count, other.Model.To.Count); entry++)
        {
            Add(feed.FirstDemand + entry, other.FirstDemand + entry, separation.By);
        }
    }

    private void Add(int one, int other, SeparationBy by)
    {
        (others[one] ??= []).Add((other, by));
        (others[other] ??= []).Add((one, by));
    }
}
