using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports networks on which two devices lead, and devices that lead two clocks.</summary>
/// <remarks>
/// A device that leads another clock than its network's is told only when that clock paces no network of the device: it is then a clock from outside, such as
/// word clock, beside the network's. Where it does pace one, the device stands between two domains, and the rule about sample rates looks at its streams.
/// Entities are the device and the network, or the device and its clocks by id.
/// </remarks>
public sealed class ClockLedTwice : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5008",
            Name = "clock-led-twice",
            Title = "Two clock leaders",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Checks = "On every network one device leads, and no device leads two clocks; devices with rate converters at their network slots may.",
            Why = "Two free-running clocks drift: at 10 millionths apart a sample is dropped or doubled every two seconds, heard as clicks.",
            Remedy = "Keep one of the clocks and let the other device follow it.",
            Source = "IEEE 802.1AS, clause 10.3; AES11 (from memory); common practice",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var clocks = context.Rig.Clocks;
        if (clocks.Count < 2)
        {
            return;
        }

        var map = ClockMap.Of(context);
        for (var clock = 0; clock < clocks.Count; clock++)
        {
            if (context.Device(clocks[clock].Leader) is not { } leader || ClockMap.HasConverter(leader))
            {
                continue;
            }

            context.LookedAt();
            if (OtherClock(context, clock) is >= 0 and var other)
            {
                ReportDevice(context, leader, clock, other);
            }
            else if (LeadsOne(context, clock))
            {
                CheckNetworks(context, map, leader, clock);
            }
        }
    }

    /// <summary>Position of the latest earlier clock that the leader of a clock leads as well, of another id; -1 for none.</summary>
    private static int OtherClock(RuleContext context, int clock)
    {
        var clocks = context.Rig.Clocks;
        for (var other = clock - 1; other >= 0; other--)
        {
            if (clocks[other].Leader == clocks[clock].Leader && clocks[other].Id != clocks[clock].Id)
            {
                return other;
            }
        }

        return -1;
    }

    private static bool LeadsOne(RuleContext context, int clock)
    {
        for (var other = 0; other < context.Rig.Clocks.Count; other++)
        {
            if (other != clock && context.Rig.Clocks[other].Leader == context.Rig.Clocks[clock].Leader)
            {
                return false;
            }
        }

        return true;
    }

    private static void CheckNetworks(RuleContext context, ClockMap map, DeviceNode leader, int clock)
    {
        if (map.IsOnNetworkOf(clock, leader))
        {
            return;
        }

        for (var network = 0; network < context.Rig.Networks.Count; network++)
        {
            if (map.IsOn(network, leader) && map.ClockOf(network) is >= 0 and var follows)
            {
                var id = context.Rig.Networks[network].Id;
                context.Report(
                    $"{leader.Id} leads clock '{context.Rig.Clocks[clock].Id}' but is on network '{id}', "
                        + $"which follows clock '{context.Rig.Clocks[follows].Id}' led by {context.Rig.Clocks[follows].Leader}.",
                    $"/rig/clocks/{clock}/leader",
                    Entity.Of("device", leader.Id),
                    Entity.Of("network", id)
                );
            }
        }
    }

    private static void ReportDevice(RuleContext context, DeviceNode leader, int clock, int other)
    {
        var one = context.Rig.Clocks[other].Id;
        var two = context.Rig.Clocks[clock].Id;
        var (low, high) = one.CompareTo(two) <= 0 ? (one, two) : (two, one);
        context.Report(
            $"{leader.Id} leads clocks '{low}' and '{high}': a device runs on one clock and cannot lead both.",
            $"/rig/clocks/{clock}/leader",
            Entity.Of("device", leader.Id),
            Entity.Of("clock", low),
            Entity.Of("clock", high)
        );
    }
}
