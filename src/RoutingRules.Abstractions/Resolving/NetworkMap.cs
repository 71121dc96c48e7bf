using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>Which devices reach which over the links of each network, and by which links.</summary>
/// <remarks>
/// A link joins two jacks; jacks that a profile bridges are one switch, others do not pass traffic on.
/// A network without any link joins all devices that have a network jack. Thread safe.
/// </remarks>
public sealed class NetworkMap
{
    private readonly Network[] networks;
    private readonly DeviceNode[] devices;
    private readonly LinkNode[] links;
    private readonly int[][] switchesOf;
    private readonly int[] linkEnds;
    private readonly int switchCount;
    private readonly bool[] hasLinks;
    private readonly int[]?[] trees;
    private int[][]? linksAt;

    internal NetworkMap(Network[] networks, DeviceNode[] devices, LinkNode[] links, int[][] switchesOf, int[] linkEnds, int switchCount)
    {
        this.networks = networks;
        this.devices = devices;
        this.links = links;
        this.switchesOf = switchesOf;
        this.linkEnds = linkEnds;
        this.switchCount = switchCount;
        hasLinks = new bool[networks.Length];
        trees = new int[]?[networks.Length * devices.Length];
        foreach (var link in links)
        {
            if (link.Network >= 0 && link.State == ConnectionState.Connected)
            {
                hasLinks[link.Network] = true;
            }
        }
    }

    /// <summary>True when the rig names links of the network that connect, so that paths follow them.</summary>
    public bool HasLinks(int network) => hasLinks[network];

    /// <summary>The position of a network in the rig, from 0; -1 when unknown.</summary>
    public int IndexOf(Id<Network> id)
    {
        for (var i = 0; i < networks.Length; i++)
        {
            if (networks[i].Id == id)
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>True when a device sits on a network: by a link, or by having a jack when the network has no links.</summary>
    public bool IsOn(int network, DeviceNode device)
    {
        ArgumentNullException.ThrowIfNull(device);
        if (!hasLinks[network])
        {
            return switchesOf[device.Index].Length > 0;
        }

        for (var i = 0; i < links.Length; i++)
        {
            if (links[i].Network == network && linkEnds[2 * i] >= 0 && (Owns(device, linkEnds[2 * i]) || Owns(device, linkEnds[(2 * i) + 1])))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The links from one device to another: fewest hops, ties by ordinal link ids; null when there is no way.</summary>
    /// <param name="network">Position of the network in the rig.</param>
    /// <param name="from">The sender.</param>
    /// <param name="to">The receiver.</param>
    /// <returns>Positions of links in the rig, from sender to receiver; empty when the network has no links or both ends are one device.</returns>
    public IReadOnlyList<int>? Path(int network, DeviceNode from, DeviceNode to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        if (!hasLinks[network])
        {
            return IsOn(network, from) && IsOn(network, to) ? [] : null;
        }

        if (from == to)
        {
            return IsOn(network, from) ? [] : null;
        }

        var cameBy = Tree(network, from);
        var best = End(cameBy, to);
        if (best < 0)
        {
            return null;
        }

        var path = new List<int>();
        for (var at = best; cameBy[at] >= 0; at = Other(cameBy[at], at))
        {
            path.Add(cameBy[at]);
        }

        path.Reverse();
        return path;
    }

    /// <summary>
    /// The directions of links that a stream passes from one device to another, from the receiver back: twice the position of a link, and one more when it is
    /// passed from its second jack to its first. Empty when the network has no links, both are one device, or there is no way.
    /// </summary>
    internal List<int> Directions(int network, DeviceNode from, DeviceNode to)
    {
        var passed = new List<int>();
        if (!hasLinks[network] || from.Index == to.Index)
        {
            return passed;
        }

        var tree = Tree(network, from);
        for (var at = End(tree, to); at >= 0 && tree[at] >= 0; at = Other(tree[at], at))
        {
            passed.Add(Direction(tree[at], at));
        }

        return passed;
    }

    /// <summary>In a tree: a switch that no link leads to.</summary>
    internal const int Unreached = -2;

    /// <summary>In a tree: a switch of the sender.</summary>
    internal const int Root = -1;

    /// <summary>How many switches there are in all devices; bridged jacks are one, every other jack is one by itself.</summary>
    internal int SwitchCount => switchCount;

    /// <summary>The switches of a device, in jack order.</summary>
    internal ReadOnlySpan<int> SwitchesOf(DeviceNode device) => switchesOf[device.Index];

    /// <summary>The switch at which a link starts; -1 when the link joins nothing.</summary>
    internal int SwitchFrom(int link) => linkEnds[2 * link];

    /// <summary>The switch at which a link ends; -1 when the link joins nothing.</summary>
    internal int SwitchTo(int link) => linkEnds[(2 * link) + 1];

    /// <summary>The direction in which a link is passed to one of its switches: twice its position, and one more from its second jack to its first.</summary>
    internal int Direction(int link, int to) => (2 * link) + (SwitchTo(link) == to ? 0 : 1);

    /// <summary>The links of all networks at a switch, by id.</summary>
    internal ReadOnlySpan<int> LinksAt(int at) => (Volatile.Read(ref linksAt) ?? Interlocked.CompareExchange(ref linksAt, SortLinks(), null) ?? linksAt)[at];

    /// <summary>The network of a link.</summary>
    internal int NetworkOf(int link) => links[link].Network;

    /// <summary>The switch at the other end of a link.</summary>
    internal int Other(int link, int at) => linkEnds[2 * link] == at ? linkEnds[(2 * link) + 1] : linkEnds[2 * link];

    /// <summary>Breadth-first tree: for each switch the link it was reached by, <see cref="Root"/> or <see cref="Unreached"/>. Not to be changed.</summary>
    internal int[] Tree(int network, DeviceNode from) => trees[(network * devices.Length) + from.Index] ??= Grow(network, from);

    /// <summary>The switch of a device that a tree reaches by the fewest hops, the first of equals; -1 when it reaches none.</summary>
    internal int End(int[] tree, DeviceNode to)
    {
        var best = -1;
        var bestLength = int.MaxValue;
        foreach (var end in switchesOf[to.Index])
        {
            if (tree[end] != Unreached && Length(tree, end) is var length && length < bestLength)
            {
                best = end;
                bestLength = length;
            }
        }

        return best;
    }

    /// <summary>True when signal from one device gets to another, as <see cref="Path"/> finds it.</summary>
    internal bool Joins(int network, DeviceNode from, DeviceNode to) =>
        !hasLinks[network] || from == to ? IsOn(network, from) && IsOn(network, to) : End(Tree(network, from), to) >= 0;

    private int[] Grow(int network, DeviceNode from)
    {
        var cameBy = new int[switchCount];
        Array.Fill(cameBy, Unreached);
        var reached = new List<int>(switchesOf[from.Index]);
        var next = new List<int>();
        var steps = new List<int>();
        foreach (var start in reached)
        {
            cameBy[start] = Root;
        }

        while (reached.Count > 0)
        {
            steps.Clear();
            foreach (var at in reached)
            {
                foreach (var link in LinksAt(at))
                {
                    if (links[link].Network == network && cameBy[Other(link, at)] == Unreached)
                    {
                        steps.Add(link);
                    }
                }
            }

            // Of several links that lead to a switch in the same number of hops the one with the lowest id carries the stream.
            steps.Sort(CompareLinks);
            next.Clear();
            foreach (var link in steps)
            {
                for (var end = 0; end < 2; end++)
                {
                    var other = linkEnds[(2 * link) + end];
                    if (cameBy[other] == Unreached)
                    {
                        cameBy[other] = link;
                        next.Add(other);
                    }
                }
            }

            (reached, next) = (next, reached);
        }

        return cameBy;
    }

    private int CompareLinks(int x, int y) => links[x].Model.Id.CompareTo(links[y].Model.Id) is var byId && byId != 0 ? byId : x - y;

    private int[][] SortLinks()
    {
        var counts = new int[switchCount];
        foreach (var end in linkEnds)
        {
            if (end >= 0)
            {
                counts[end]++;
            }
        }

        var order = new int[links.Length];
        for (var i = 0; i < order.Length; i++)
        {
            order[i] = i;
        }

        Array.Sort(order, CompareLinks);
        var found = new int[switchCount][];
        for (var at = 0; at < switchCount; at++)
        {
            found[at] = counts[at] == 0 ? [] : new int[counts[at]];
            counts[at] = 0;
        }

        foreach (var link in order)
        {
            if (linkEnds[2 * link] >= 0)
            {
                var (from, to) = (linkEnds[2 * link], linkEnds[(2 * link) + 1]);
                found[from][counts[from]++] = link;
                found[to][counts[to]++] = link;
            }
        }

        return found;
    }

    private int Length(int[] cameBy, int at)
    {
        var length = 0;
        for (; cameBy[at] >= 0; at = Other(cameBy[at], at))
        {
            length++;
        }

        return length;
    }

    private bool Owns(DeviceNode device, int end) => Array.IndexOf(switchesOf[devices[device.Index].Index], end) >= 0;
}
