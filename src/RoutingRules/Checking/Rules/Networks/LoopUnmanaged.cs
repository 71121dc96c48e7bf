using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports rings of links on a network that nothing keeps from flooding.</summary>
/// <remarks>
/// One finding for each independent ring: links are taken by id, and each that joins two switches which are joined already closes a ring. Entities are the
/// network and the links of the ring by id. Bridged jacks of a device are one switch; a ring through jacks that are not bridged is none.
/// </remarks>
public sealed class LoopUnmanaged : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5004",
            Name = "loop-unmanaged",
            Title = "Loop of links without loop control",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Checks = "The links of a network close a loop only where its loop control says what keeps the loop from flooding.",
            Why = "Packets run round an unmanaged loop for ever and pile up: within seconds no audio gets through anywhere on the network.",
            Remedy = "Unplug one link of the loop, or set up a protocol in all its switches that blocks one and state it as the network's loop control.",
            Source = "IEEE 802.1D and 802.1Q, IEC 62439-2 (from memory)",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var map = context.Network;
        DisjointSets? parts = null;
        for (var network = 0; network < context.Rig.Networks.Count; network++)
        {
            context.LookedAt(map.HasLinks(network) ? 1 : 0);
            if (context.Rig.Networks[network].LoopControl == LoopControl.None && map.HasLinks(network))
            {
                parts ??= new DisjointSets(map.SwitchCount);
                Check(context, map, network, parts);
            }
        }
    }

    private static void Check(RuleContext context, NetworkMap map, int network, DisjointSets parts)
    {
        var links = new List<LinkNode>();
        foreach (var link in NetworkLinks.Of(context).On(network))
        {
            if (map.SwitchFrom(link.Index) >= 0)
            {
                links.Add(link);
            }
        }

        // As many links as switches or more: without that there is no ring, which is the usual case and needs no sorting.
        Reset(map, links, parts);
        var hasRing = false;
        foreach (var link in links)
        {
            hasRing |= !parts.Join(map.SwitchFrom(link.Index), map.SwitchTo(link.Index));
        }

        if (!hasRing)
        {
            return;
        }

        links.Sort((x, y) => x.Model.Id.CompareTo(y.Model.Id) is var order && order != 0 ? order : x.Index - y.Index);
        Reset(map, links, parts);
        var tree = new HashSet<int>();
        var closing = new List<LinkNode>();
        foreach (var link in links)
        {
            if (parts.Join(map.SwitchFrom(link.Index), map.SwitchTo(link.Index)))
            {
                tree.Add(link.Index);
            }
            else
            {
                closing.Add(link);
            }
        }

        foreach (var link in closing)
        {
            Report(context, network, Ring(map, tree, link));
        }
    }

    private static void Reset(NetworkMap map, List<LinkNode> links, DisjointSets parts)
    {
        foreach (var link in links)
        {
            parts.Reset(map.SwitchFrom(link.Index));
            parts.Reset(map.SwitchTo(link.Index));
        }
    }

    /// <summary>The closing link and the way through the tree between its ends.</summary>
    private static List<int> Ring(NetworkMap map, HashSet<int> tree, LinkNode closing)
    {
        var search = new LinkSearch(map);
        var end = search.Find([map.SwitchFrom(closing.Index)], at => at == map.SwitchTo(closing.Index), (link, _) => tree.Contains(link));
        return [closing.Index, .. search.Back(end)];
    }

    private static void Report(RuleContext context, int network, List<int> ring)
    {
        var links = ring.ConvertAll(link => context.Links[link].Model);
        links.Sort((x, y) => x.Id.CompareTo(y.Id));
        var id = context.Rig.Networks[network].Id;
        context.Report(
            $"Links {Wording.List(links.ConvertAll(link => $"'{link.Id}'"))} of network '{id}' close a loop, and nothing keeps it from flooding.",
            $"/rig/links/{ring[0]}",
            [Entity.Of("network", id), .. links.ConvertAll(link => Entity.Of("link", link.Id))]
        );
    }
}
