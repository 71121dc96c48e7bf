using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Resilience;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Resilience;

/// <summary>Reports two networks that lead to the same devices and yet go through one switch or hang on one supply.</summary>
/// <remarks>
/// Two networks of one transport stand in for each other when at least two devices that send or receive streams sit on both by links. One finding for each
/// two; entities are the networks, and the switches or the supply. Of supplies nothing is judged where a switch names none.
/// </remarks>
public sealed class NetworksShare : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR8005",
            Name = "networks-share",
            Title = "Primary and secondary network fail together",
            Family = RuleFamily.Resilience,
            Severity = Severity.Warning,
            Checks = "Two networks that join the same devices use different switches, and their switches do not all hang on one supply.",
            Why = "The second network is there for the moment when the first one dies; one switch or one breaker takes both.",
            Remedy = "Give the second network switches of its own, on another supply.",
            Source = "common practice, no source; two separate networks as in SMPTE ST 2022-7 (title only)",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var networks = context.Rig.Networks;
        for (var i = 0; i < networks.Count; i++)
        {
            for (var j = i + 1; j < networks.Count; j++)
            {
                if (networks[i].Transport == networks[j].Transport && context.Network.HasLinks(i) && context.Network.HasLinks(j))
                {
                    Check(context, i, j);
                }
            }
        }
    }

    private static void Check(RuleContext context, int first, int second)
    {
        var ones = Joined(context, first);
        var others = Joined(context, second);
        var ends = 0;
        var shared = new List<DeviceNode>();
        var switches = new List<DeviceNode>();
        foreach (var device in context.Devices)
        {
            var (isOne, isOther) = (ones.Contains(device), others.Contains(device));
            var hasSlots = (isOne || isOther) && ClockMap.HasSlots(device);
            ends += isOne && isOther && hasSlots ? 1 : 0;
            if (isOne && isOther && !hasSlots)
            {
                shared.Add(device);
            }

            if ((isOne || isOther) && !hasSlots)
            {
                switches.Add(device);
            }
        }

        if (ends < 2)
        {
            return;
        }

        var isPowered = Supplies.HasTwo(context) && Has(switches, ones) && Has(switches, others) && Supplies.AreStated(switches);
        context.LookedAt(shared.Count > 0 || isPowered ? 1 : 0);
        if (shared.Count > 0)
        {
            Report(context, first, second, $"go through {Names(shared)}", shared.ConvertAll(device => Entity.Of("switch", device.Id)));
        }
        else if (isPowered && Supplies.Common(switches) is { } supply)
        {
            Report(context, first, second, $"hang on supply '{supply}': {Names(switches)} have no other", [Entity.Of("supply", supply)]);
        }
    }

    private static HashSet<DeviceNode> Joined(RuleContext context, int network)
    {
        var joined = new HashSet<DeviceNode>();
        foreach (var link in NetworkLinks.Of(context).On(network))
        {
            joined.Add(context.DeviceOf(link.From));
            joined.Add(context.DeviceOf(link.To));
        }

        return joined;
    }

    private static bool Has(List<DeviceNode> switches, HashSet<DeviceNode> joined) => switches.Exists(joined.Contains);

    private static string Names(List<DeviceNode> devices) => Wording.Names(devices.ConvertAll(device => device.Id.Value));

    private static void Report(RuleContext context, int first, int second, string what, List<Entity> entities)
    {
        var (one, other) = (context.Rig.Networks[first].Id, context.Rig.Networks[second].Id);
        var (low, high) = one.CompareTo(other) < 0 ? (one, other) : (other, one);
        context.Report(
            $"Networks '{one}' and '{other}' lead to the same devices, so that one can stand in for the other, but both {what}.",
            $"/rig/networks/{second}",
            [Entity.Of("network", low), Entity.Of("network", high), .. entities]
        );
    }
}
