using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Networks;

/// <summary>The links that connect, by network.</summary>
internal sealed class NetworkLinks
{
    private readonly int[] ends;
    private readonly LinkNode[] links;

    private NetworkLinks(RuleContext context)
    {
        ends = new int[context.Rig.Networks.Count + 1];
        foreach (var link in context.Links)
        {
            if (link.State == ConnectionState.Connected && link.Network >= 0)
            {
                ends[link.Network]++;
            }
        }

        for (var i = 1; i < ends.Length; i++)
        {
            ends[i] += ends[i - 1];
        }

        // Filled from the last link down, each place moves from the end of its network to the start.
        links = new LinkNode[ends[^1]];
        for (var i = context.Links.Count - 1; i >= 0; i--)
        {
            var link = context.Links[i];
            if (link.State == ConnectionState.Connected && link.Network >= 0)
            {
                links[--ends[link.Network]] = link;
            }
        }
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static NetworkLinks Of(RuleContext context) => context.Shared(static asking => new NetworkLinks(asking));

    /// <summary>The links of a network, in document order.</summary>
    public ReadOnlySpan<LinkNode> On(int network) => links.AsSpan(ends[network]..ends[network + 1]);
}
