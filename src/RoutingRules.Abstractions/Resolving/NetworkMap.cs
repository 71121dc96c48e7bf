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

    internal NetworkMap(Network[] networks, DeviceNode[] devices, LinkNode[] links, int[][] switchesOf, int[] linkEnds, int switchCount)
    {
        this.networks = networks;
        this.devices = devices;
        this.links = links;
        this.switchesOf = switchesOf;
        this.linkEnds = linkEnds;
        this.switchCount = switchCount;
        hasLinks = new bool[networks.Length];
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
            if (links[i].Network == network && linkEnds[2 * i] >= 0
                && (Owns(device, linkEnds[2 * i]) || Owns(device, linkEnds[(2 * i) + 1])))
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
        var best = -1;
        var bestLength = int.MaxValue;
        foreach (var end in switchesOf[to.Index])
        {
            if (cameBy[end] is var link && link != Unreached && Length(cameBy, end) < bestLength)
            {
                best = end;
                bestLength = Length(cameBy, end);
            }
        }

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

    private const int Unreached = -2;
    private const int Root = -1;

    /// <summary>Breadth-first tree: for each switch the link it was reached by, <see cref="Root"/> or <see cref="Unreached"/>.</summary>
    private int[] Tree(int network, DeviceNode from)
    {
        var cameBy = new int[switchCount];
        Array.Fill(cameBy, Unreached);
        var queue = new Queue<int>();
        foreach (var start in switchesOf[from.Index])
        {
            cameBy[start] = Root;
            queue.Enqueue(start);
        }

        while (queue.Count > 0)
        {
            var at = queue.Dequeue();
            foreach (var link in LinksAt(network, at))
            {
                var other = Other(link, at);
                if (cameBy[other] == Unreached)
                {
                    cameBy[other] = link;
                    queue.Enqueue(other);
                }
            }
        }

        return cameBy;
    }

    private List<int> LinksAt(int network, int at)
    {
        var found = new List<int>();
        for (var i = 0; i < links.Length; i++)
        {
            if (links[i].Network == network && (linkEnds[2 * i] == at || linkEnds[(2 * i) + 1] == at))
            {
                found.Add(i);
            }
        }

        found.Sort((x, y) => links[x].Model.Id.CompareTo(links[y].Model.Id) is var order && order != 0 ? order : x.CompareTo(y));
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

    private int Other(int link, int at) => linkEnds[2 * link] == at ? linkEnds[(2 * link) + 1] : linkEnds[2 * link];

    private bool Owns(DeviceNode device, int end) => Array.IndexOf(switchesOf[devices[device.Index].Index], end) >= 0;
}
