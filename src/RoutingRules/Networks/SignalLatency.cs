using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Networks;

/// <summary>
/// Adds up latency as a trace does: the port groups passed, both ends included, paths through devices and packet times. What is not stated counts nothing.
/// </summary>
internal sealed class SignalLatency(RuleContext context)
{
    /// <summary>For each device passed the latency of each of its groups.</summary>
    private readonly double[]?[] groups = new double[]?[context.Devices.Count];

    /// <summary>For each stream that was passed what its network states; not a number where that is nothing.</summary>
    private readonly double?[] packets = new double?[context.Streams.Count];

    /// <summary>The one that all rules of a run share.</summary>
    public static SignalLatency Of(RuleContext context) => context.Shared(static asking => new SignalLatency(asking));

    /// <summary>From the real source of a point to the point, in milliseconds.</summary>
    /// <param name="point">A point that carries a real source.</param>
    /// <param name="isPartial">Set when a part on the way states no latency.</param>
    public double To(PointIndex point, ref bool isPartial)
    {
        var sum = 0.0;
        var last = PointIndex.None;
        foreach (var passed in context.Upward(point))
        {
            sum += (last.IsNone ? 0 : Hop(passed, last, ref isPartial)) + At(passed, ref isPartial);
            last = passed;
        }

        return sum;
    }

    /// <summary>From a point on to the latest of the places it feeds, in milliseconds; 0 when it feeds nothing.</summary>
    /// <param name="point">The point.</param>
    /// <param name="isPartial">Set when a part on the way states no latency.</param>
    /// <param name="end">That place, the last that signal comes to; the point itself when it feeds nothing.</param>
    public double Beyond(PointIndex point, ref bool isPartial, out PointIndex end)
    {
        var latest = 0.0;
        var depth = 0;
        end = point;
        if (context.Fed(point).IsEmpty)
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

            foreach (var fed in context.Fed(next.Point))
            {
                var to = new PointIndex(fed);
                if (to == point)
                {
                    continue; // What sits in a loop comes back to itself.
                }

                pending.Push((to, next.Sum + Hop(next.Point, to, ref isPartial) + At(to, ref isPartial), next.Depth + 1));
            }
        }

        return latest;
    }

    private double At(PointIndex point, ref bool isPartial)
    {
        var device = context.DeviceOf(point);
        var value = (groups[device.Index] ??= Stated(device))[SignalGraph.GroupOf(device, point).Index];
        isPartial |= double.IsNaN(value);
        return double.IsNaN(value) ? 0 : value;
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
    internal static double Stated(DeviceProfile profile, GroupNode group)
    {
        foreach (var entry in profile.LatencyMilliseconds)
        {
            if (entry.Group == group.Id)
            {
                return entry.Value;
            }
        }

        return group.Kind is PortKind.Input or PortKind.Output && !IsThrough(profile, group.Id) ? double.NaN : 0;
    }

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

    private double Hop(PointIndex from, PointIndex to, ref bool isPartial)
    {
        double? stated = 0;
        var kind = context.Via(to);
        if (kind == HopKind.Stream)
        {
            var stream = context.ViaIndex(to);
            var packet = packets[stream] ??= Packet(context.Streams[stream].Model);
            stated = double.IsNaN(packet) ? null : packet;
        }
        else if (kind == HopKind.Through)
        {
            stated = Processing(context.DeviceOf(to).Profile, context.GroupOf(from).Id, context.GroupOf(to).Id);
        }

        isPartial |= stated is null;
        return stated ?? 0;
    }

    private double Packet(AudioStream stream)
    {
        var network = context.Network.IndexOf(stream.Network);
        return network < 0 ? double.NaN : PacketTime.UntilGivenOut(context.Rig.Networks[network]) ?? double.NaN;
    }

    /// <summary>What a path through a device takes; null where it should state something and does not.</summary>
    internal static double? Processing(DeviceProfile profile, Id<PortGroup> from, Id<PortGroup> to)
    {
        foreach (var entry in profile.Through)
        {
            if (entry.From == from && entry.To == to)
            {
                return entry.LatencyMilliseconds ?? (entry.Kind == ThroughKind.Passive ? 0 : null);
            }
        }

        return 0;
    }
}
