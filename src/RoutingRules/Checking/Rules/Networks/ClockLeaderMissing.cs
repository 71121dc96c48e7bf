using System.Globalization;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports networks that carry streams and have no clock, or whose clock's leader is not joined to them.</summary>
/// <remarks>One finding for each network; entities are the network and, where it names one, the clock.</remarks>
public sealed class ClockLeaderMissing : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5007",
            Name = "clock-leader-missing",
            Title = "Network without a clock leader",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Checks =
                "Every network that carries streams names a clock, and the device that leads the clock is on that network or joined to it by "
                + "networks of the same clock.",
            Why = "Without a leader that was chosen any device may take the lead, often a guest's, and when it is unplugged everything clicks or goes silent.",
            Remedy =
                "Name one clock for the network and let a device lead it that stays on all day and sits near the middle of the network: not a "
                + "guest's, not one that is plugged in late.",
            Source = "IEEE 802.1AS, clause 10.3 and priority1 (from memory); common practice",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Streams.Count == 0)
        {
            return;
        }

        var map = ClockMap.Of(context);
        for (var index = 0; index < context.Rig.Networks.Count; index++)
        {
            var network = context.Rig.Networks[index];
            if (map.StreamsOn(index) is not (> 0 and var count))
            {
                continue;
            }

            context.LookedAt();
            if (network.Clock is null)
            {
                var streams = count == 1 ? "a stream" : string.Create(CultureInfo.InvariantCulture, $"{count} streams");
                context.Report(
                    $"Network '{network.Id}' carries {streams} but names no clock, so nobody is set to lead.",
                    $"/rig/networks/{index}",
                    Entity.Of("network", network.Id)
                );
            }
            else if (map.ClockOf(index) is >= 0 and var clock && !IsLed(context, map, index, clock) && !map.HasBrokenLink(index))
            {
                var leader = context.Rig.Clocks[clock].Leader;
                context.Report(
                    $"Network '{network.Id}' follows clock '{network.Clock}', but {leader}, which leads it, is not joined to that network.",
                    $"/rig/networks/{index}/clock",
                    Entity.Of("network", network.Id),
                    Entity.Of("clock", network.Clock.Value)
                );
            }
        }
    }

    private static bool IsLed(RuleContext context, ClockMap map, int network, int clock)
    {
        if (context.Device(context.Rig.Clocks[clock].Leader) is not { } leader)
        {
            return true;
        }

        if (map.IsOn(network, leader))
        {
            return true;
        }

        if (!context.Network.HasLinks(network) && context.Network.SwitchesOf(leader).Length > 0)
        {
            return true;
        }

        var reach = map.Reach(clock);
        foreach (var device in context.Devices)
        {
            if (map.IsOn(network, device) && reach.Find(device.Index) == reach.Find(leader.Index))
            {
                return true;
            }
        }

        return false;
    }
}
