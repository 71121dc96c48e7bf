using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>What two placed feeds hang on together: a device, a supply, a network link.</summary>
internal sealed class FeedPaths(RuleContext context)
{
    /// <summary>The device both stand on, or null.</summary>
    public DeviceNode? Device(DemandNode one, DemandNode other) =>
        context.DeviceOf(one.Existing) is var device && device == context.DeviceOf(other.Existing) ? device : null;

    /// <summary>A supply that feeds the devices of both, or null.</summary>
    public string? Power(DemandNode one, DemandNode other)
    {
        foreach (var supply in context.DeviceOf(one.Existing).Model.Power)
        {
            foreach (var second in context.DeviceOf(other.Existing).Model.Power)
            {
                if (supply == second)
                {
                    return supply.Value;
                }
            }
        }

        return null;
    }

    /// <summary>The links that the streams of both cross, in rig order.</summary>
    public List<LinkNode> Links(DemandNode one, DemandNode other)
    {
        var shared = new List<LinkNode>();
        var first = Crossed(one);
        foreach (var link in Crossed(other))
        {
            if (first.Contains(link))
            {
                shared.Add(context.Links[link]);
            }
        }

        return shared;
    }

    /// <summary>True when the devices at the ends of a feed's streams stay joined without a link, so that crossing it is a choice.</summary>
    public bool IsAvoidable(LinkNode link, DemandNode demand)
    {
        foreach (var (from, to, network) in Streams(demand))
        {
            if (network == link.Network && !AreJoined(network, from, to, link))
            {
                return false;
            }
        }

        return true;
    }

    private SortedSet<int> Crossed(DemandNode demand)
    {
        var crossed = new SortedSet<int>();
        foreach (var (from, to, network) in Streams(demand))
        {
            foreach (var link in context.Network.Path(network, from, to) ?? [])
            {
                crossed.Add(link);
            }
        }

        return crossed;
    }

    /// <summary>Sender, receiver and network of each stream on the way to where a feed is placed.</summary>
    private HashSet<(DeviceNode From, DeviceNode To, int Network)> Streams(DemandNode demand)
    {
        var found = new HashSet<(DeviceNode From, DeviceNode To, int Network)>();
        for (var position = 0; position < demand.Width; position++)
        {
            foreach (var point in context.Upward(demand.Existing + position))
            {
                if (point == demand.Feed!.Source + position)
                {
                    break;
                }

                if (context.Via(point) == HopKind.Stream)
                {
                    var network = context.Network.IndexOf(context.Streams[context.ViaIndex(point)].Model.Network);
                    if (network >= 0)
                    {
                        found.Add((context.DeviceOf(context.Upstream(point)), context.DeviceOf(point), network));
                    }
                }
            }
        }

        return found;
    }

    private bool AreJoined(int network, DeviceNode from, DeviceNode to, LinkNode without)
    {
        var reached = Jacks(from);
        var goal = Jacks(to);
        for (var grew = true; grew; )
        {
            grew = false;
            foreach (var link in context.Links)
            {
                if (
                    link != without
                    && link.Network == network
                    && link.State == ConnectionState.Connected
                    && reached.Contains(link.From) != reached.Contains(link.To)
                )
                {
                    var end = reached.Contains(link.From) ? link.To : link.From;
                    reached.UnionWith(Bridged(end));
                    grew = true;
                }
            }
        }

        return reached.Overlaps(goal);
    }

    private static HashSet<PointIndex> Jacks(DeviceNode device)
    {
        var jacks = new HashSet<PointIndex>();
        foreach (var group in device.Groups)
        {
            for (var i = 0; group.Kind == PortKind.Network && i < group.Count; i++)
            {
                jacks.Add(device.First(group) + i);
            }
        }

        return jacks;
    }

    private HashSet<PointIndex> Bridged(PointIndex jack)
    {
        var joined = new HashSet<PointIndex> { jack };
        var first = context.DeviceOf(jack).First(context.GroupOf(jack));
        var number = context.NumberOf(jack);
        foreach (var bridge in context.GroupOf(jack).Model.Bridged)
        {
            for (var other = bridge.Jacks.First; bridge.Jacks.First <= number && number <= bridge.Jacks.Last && other <= bridge.Jacks.Last; other++)
            {
                joined.Add(first + (other - 1));
            }
        }

        return joined;
    }
}
