using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports devices at which links of two networks meet on one switch.</summary>
/// <remarks>One finding for each switch; entities are the device, one of its jacks when it has several switches, and the networks by id.</remarks>
public sealed class NetworksJoined : Rule<DeviceNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5012",
            Name = "networks-joined",
            Title = "Two networks joined",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Checks = "The links at one switch, or at bridged jacks of one device, belong to one network.",
            Why = "A primary and a secondary that are joined anywhere are one network: a fault takes both, and the second copy of everything floods the first.",
            Remedy = "Plug the link into a jack that is a switch of its own, or give both links the same network when they are meant to be one.",
            Source = "common practice, no source; the separate paths of SMPTE ST 2022-7 and IEC 62439-3 (titles only)",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        context.LookedAt(0);
        if (context.Rig.Networks.Count < 2)
        {
            return;
        }

        var map = context.Network;
        var switches = map.SwitchesOf(subject);
        foreach (var at in switches)
        {
            Check(context, map, subject, at, switches.Length > 1);
        }
    }

    private static void Check(RuleContext context, NetworkMap map, DeviceNode device, int at, bool namesJack)
    {
        context.LookedAt(map.LinksAt(at).Length > 1 ? 1 : 0);
        if (IsOfOneNetwork(context, map.LinksAt(at)))
        {
            return;
        }

        Report(context, map, device, at, namesJack);
    }

    private static bool IsOfOneNetwork(RuleContext context, ReadOnlySpan<int> links)
    {
        foreach (var link in links)
        {
            if (context.Links[link].Network != context.Links[links[0]].Network)
            {
                return false;
            }
        }

        return true;
    }

    private static void Report(RuleContext context, NetworkMap map, DeviceNode device, int at, bool namesJack)
    {
        var links = new List<LinkNode>();
        foreach (var index in map.LinksAt(at))
        {
            var link = context.Links[index];
            if (!links.Exists(other => other.Network == link.Network))
            {
                links.Add(link);
            }
        }

        links.Sort((x, y) => context.Rig.Networks[x.Network].Id.CompareTo(context.Rig.Networks[y.Network].Id));
        var ids = links.ConvertAll(link => context.Rig.Networks[link.Network].Id);
        var jacks = links.ConvertAll(link => JackAt(link, device));
        var ends = new List<string>();
        for (var i = 0; i < links.Count; i++)
        {
            ends.Add($"link '{links[i].Model.Id}' of network '{ids[i]}' at {jacks[i]}");
        }

        var latest = links[0];
        foreach (var link in links)
        {
            latest = link.Index > latest.Index ? link : latest;
        }

        context.Report(
            $"{device.Id} joins networks {Wording.List(ids.ConvertAll(id => $"'{id}'"))} on one switch: {Wording.List(ends)}.",
            $"/rig/links/{latest.Index}",
            [
                Entity.Of("device", device.Id),
                .. namesJack ? [Entity.Of("jack", FirstJack(jacks))] : Array.Empty<Entity>(),
                .. ids.ConvertAll(id => Entity.Of("network", id)),
            ]
        );
    }

    private static PointRange JackAt(LinkNode link, DeviceNode device) => link.Model.From.Device == device.Id ? link.Model.From : link.Model.To;

    private static PointRange FirstJack(List<PointRange> jacks)
    {
        var first = jacks[0];
        foreach (var jack in jacks)
        {
            first = jack.First < first.First ? jack : first;
        }

        return first;
    }
}
