using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Resilience;

/// <summary>What each feed cannot do without: the devices and links whose loss silences it.</summary>
/// <remarks>
/// Devices are numbered by their position in the rig, links by theirs after all devices. A feed that arrives at several places is silenced by what silences
/// all of them. On the way count the source's device, every device passed, the only links and switches of the networks between them, and what plays an
/// output; of several cables what all of them lead to.
/// </remarks>
internal sealed class LossMap(RuleContext context)
{
    private readonly int deviceCount = context.Devices.Count;
    private readonly Dictionary<int, NetworkCuts> cuts = [];
    private readonly Dictionary<(int Network, int From, int To), int[]> ways = [];
    private readonly List<int> needed = [];

    public int CountOfDevices => deviceCount;

    /// <summary>The one that all rules of a run share.</summary>
    public static LossMap Of(RuleContext context) => context.Shared(static asking => new LossMap(asking));

    /// <summary>What silences a feed, in ascending order; null when it is not delivered anywhere.</summary>
    public List<int>? Silencers(FeedNode feed)
    {
        List<int>? common = null;
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            var at = context.Demand(feed, entry).Existing;
            for (var position = 0; !at.IsNone && position < feed.Width; position++)
            {
                common = Intersect(common, Needed(at + position));
            }
        }

        return common;
    }

    /// <summary>What a point needs to sound, in ascending order. The list is used again at the next call.</summary>
    private List<int> Needed(PointIndex at)
    {
        needed.Clear();
        foreach (var point in context.Upward(at))
        {
            needed.Add(context.DeviceOf(point).Index);
            if (context.Upstream(point) is not { IsNone: false } before)
            {
                break;
            }

            if (context.Via(point) == HopKind.Stream)
            {
                var network = context.Network.IndexOf(context.Streams[context.ViaIndex(point)].Model.Network);
                needed.AddRange(Between(network, context.DeviceOf(before), context.DeviceOf(point)));
            }
            else if (context.Via(point) == HopKind.Carrier)
            {
                needed.Add(deviceCount + context.ViaIndex(point));
            }
        }

        AddPlayers(at);
        needed.Sort();
        var kept = 0;
        for (var i = 0; i < needed.Count; i++)
        {
            if (i == 0 || needed[i] != needed[i - 1])
            {
                needed[kept++] = needed[i];
            }
        }

        needed.RemoveRange(kept, needed.Count - kept);
        return needed;
    }

    /// <summary>True when signal still gets from one device to another over some network without a device or link.</summary>
    public bool IsJoinedWithout(int lost, DeviceNode from, DeviceNode to)
    {
        if (from == to)
        {
            return from.Index != lost;
        }

        for (var network = 0; network < context.Rig.Networks.Count; network++)
        {
            if (
                !context.Network.HasLinks(network)
                    ? context.Network.Joins(network, from, to) && from.Index != lost && to.Index != lost
                    : Cuts(network).Reaches(from, to, lost >= deviceCount ? lost - deviceCount : -1, lost < deviceCount ? lost : -1)
            )
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Leaves in a list in ascending order what another shares with it; a new list of all of the other when the first is null.</summary>
    public static List<int> Intersect(List<int>? one, List<int> other)
    {
        if (one is null)
        {
            return [.. other];
        }

        var kept = 0;
        for (int i = 0, j = 0; i < one.Count && j < other.Count; )
        {
            if (one[i] == other[j])
            {
                one[kept++] = one[i];
                i++;
                j++;
            }
            else if (one[i] < other[j])
            {
                i++;
            }
            else
            {
                j++;
            }
        }

        one.RemoveRange(kept, one.Count - kept);
        return one;
    }

    private void AddPlayers(PointIndex at)
    {
        // What sits in a loop comes back to itself.
        var start = at.Value;
        var fed = context.Fed(at);
        for (; fed.Length == 1 && fed[0] != start; fed = context.Fed(at))
        {
            at = new PointIndex(fed[0]);
            needed.Add(context.DeviceOf(at).Index);
        }

        if (fed.Length > 1)
        {
            needed.AddRange(InCommon(at, [at]));
        }
    }

    /// <summary>The devices, in ascending order, that all ways have in common which part behind a point.</summary>
    private List<int> InCommon(PointIndex at, HashSet<PointIndex> passed)
    {
        List<int>? common = null;
        foreach (var next in context.Fed(at))
        {
            var point = new PointIndex(next);
            if (passed.Add(point))
            {
                List<int> way = [.. InCommon(point, passed), context.DeviceOf(point).Index];
                way.Sort();
                common = Intersect(common, way);
            }
        }

        return common ?? [];
    }

    private int[] Between(int network, DeviceNode from, DeviceNode to)
    {
        if (network < 0 || !context.Network.HasLinks(network))
        {
            return [];
        }

        if (!ways.TryGetValue((network, from.Index, to.Index), out var way))
        {
            var found = new List<int>();
            Cuts(network).Collect(from, to, link => found.Add(deviceCount + link), found.Add);
            ways.Add((network, from.Index, to.Index), way = [.. found]);
        }

        return way;
    }

    private NetworkCuts Cuts(int network)
    {
        if (!cuts.TryGetValue(network, out var found))
        {
            var devices = new DeviceNode[deviceCount];
            foreach (var device in context.Devices)
            {
                devices[device.Index] = device;
            }

            cuts.Add(network, found = new NetworkCuts(context.Network, network, context.Links.Count, devices));
        }

        return found;
    }
}
