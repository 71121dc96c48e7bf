using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Networks;

/// <summary>
/// Adds up latency as a trace does: the port groups passed, both ends included, paths through devices and packet times. What is not stated counts nothing.
/// </summary>
/// <param name="show">The show.</param>
/// <param name="counting">Counts the points passed for a rule; null where nobody counts.</param>
internal sealed class SignalLatency(ResolvedShow show, RuleContext? counting = null)
{
    private readonly SignalGraph graph = show.Graph;

    /// <summary>For each device passed the latency of each of its groups.</summary>
    private readonly double[]?[] groups = new double[]?[show.Devices.Count];

    /// <summary>For each stream that was passed what its network states; not a number where that is nothing.</summary>
    private readonly double?[] packets = new double?[show.Streams.Count];

    /// <summary>The one that all rules of a run share.</summary>
    public static SignalLatency Of(RuleContext context, ResolvedShow show) => context.Shared(asking => new SignalLatency(show, asking));

    /// <summary>From the real source of a point to the point, in milliseconds.</summary>
    /// <param name="point">A point that carries a real source.</param>
    /// <param name="isPartial">Set when a part on the way states no latency.</param>
    public double To(PointIndex point, ref bool isPartial)
    {
        var sum = 0.0;
        var last = PointIndex.None;
        foreach (var passed in counting?.Upward(point) ?? graph.Upward(point))
        {
            sum += (last.IsNone ? 0 : Hop(passed, last, ref isPartial)) + At(passed, ref isPartial);
            last = passed;
        }

        return sum;
    }

    /// <summary>From a point on to the latest of the places it feeds, in milliseconds; 0 when it feeds nothing.</summary>
    /// <param name="point">Where to start.</param>
    /// <param name="isPartial">Set when a part on the way states no latency.</param>
    /// <param name="end">That place, the last that signal comes to; the point itself when it feeds nothing.</param>
    /// <param name="isByWire">True to go on by cables and paths through devices only, which no patch changes.</param>
    public double Beyond(PointIndex point, ref bool isPartial, out PointIndex end, bool isByWire = false)
    {
        var latest = 0.0;
        var depth = 0;
        end = point;
        if (Fed(point).IsEmpty)
        {
            return latest;
        }

        var pending = new Stack<(PointIndex Point, double Sum, int Depth)>([(point, 0, 0)]);
        while (pending.TryPop(out var next))
        {
            // Of places reached at one time the one farthest down the chain is where it is heard, and of equals the lowest.
            if ((next.Sum, next.Depth, -next.Point.Value).CompareTo((latest, depth, -end.Value)) > 0)
            {
                (latest, depth, end) = (next.Sum, next.Depth, next.Point);
            }

            foreach (var fed in Fed(next.Point))
            {
                var to = new PointIndex(fed);
                if (to == point || (isByWire && graph.Via(to) is not (HopKind.Cable or HopKind.Through)))
                {
                    continue; // What sits in a loop comes back to itself.
                }

                pending.Push((to, next.Sum + Hop(next.Point, to, ref isPartial) + At(to, ref isPartial), next.Depth + 1));
            }
        }

        return latest;
    }

    /// <summary>What a signal takes at a point, in milliseconds.</summary>
    public double At(PointIndex point, ref bool isPartial)
    {
        var device = graph.DeviceOf(point);
        var value = (groups[device.Index] ??= Stated(device))[SignalGraph.GroupOf(device, point).Index];
        isPartial |= double.IsNaN(value);
        return double.IsNaN(value) ? 0 : value;
    }

    /// <summary>What the slowest group of a kind takes, in milliseconds.</summary>
    public double Slowest(DeviceNode device, PortKind kind)
    {
        var slowest = 0.0;
        foreach (var group in device.Groups)
        {
            // What is not a number is never greater.
            slowest = group.Kind == kind && (groups[device.Index] ??= Stated(device))[group.Index] is var value && value > slowest ? value : slowest;
        }

        return slowest;
    }

    private static double[] Stated(DeviceNode device)
    {
        var stated = new double[device.Groups.Count];
        foreach (var group in device.Groups)
        {
            stated[group.Index] = Stated(device.Profile, group);
        }

        return stated;
    }

    /// <summary>What the profile states for a group; not a number where it should state something and does not.</summary>
    private static double Stated(DeviceProfile profile, GroupNode group) =>
        StatedLatency.Of(profile, group.Id) ?? (group.Kind is PortKind.Input or PortKind.Output && !IsThrough(profile, group.Id) ? double.NaN : 0);

    private static bool IsThrough(DeviceProfile profile, Id<PortGroup> group)
    {
        foreach (var entry in profile.Through)
        {
            if (entry.From == group || entry.To == group)
            {
                return true;
            }
        }

        return false;
    }

    private ReadOnlySpan<int> Fed(PointIndex point) => counting is null ? graph.Fed(point) : counting.Fed(point);

    private double Hop(PointIndex from, PointIndex to, ref bool isPartial)
    {
        double? stated = 0;
        var kind = graph.Via(to);
        if (kind == HopKind.Stream)
        {
            var stream = graph.ViaIndex(to);
            var packet = packets[stream] ??= Packet(show.Streams[stream].Model);
            stated = double.IsNaN(packet) ? null : packet;
        }
        else if (kind == HopKind.Through)
        {
            stated = Processing(graph.DeviceOf(to).Profile, graph.GroupOf(from).Id, graph.GroupOf(to).Id);
        }

        isPartial |= stated is null;
        return stated ?? 0;
    }

    private double Packet(AudioStream stream)
    {
        var network = show.Network.IndexOf(stream.Network);
        return network < 0 ? double.NaN : PacketTime.UntilGivenOut(show.Document.Rig.Networks[network]) ?? double.NaN;
    }

    /// <summary>What a path through a device takes; null where it should state something and does not.</summary>
    private static double? Processing(DeviceProfile profile, Id<PortGroup> from, Id<PortGroup> to) =>
        StatedLatency.Through(profile, from, to) is { } entry ? entry.LatencyMilliseconds ?? (entry.Kind == ThroughKind.Passive ? 0 : null) : 0;
}
