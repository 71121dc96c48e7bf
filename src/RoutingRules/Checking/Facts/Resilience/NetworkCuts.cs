using RoutingRules.Networks;
using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Resilience;

/// <summary>Which links and devices of a network are the only way between two devices.</summary>
/// <remarks>
/// Links fall into sets of which any two lie on a common ring (biconnected components; R. Tarjan, SIAM Journal on Computing 1 (1972) 146). A link alone in its
/// set is a bridge; a switch between two links of different sets on the shortest way is an articulation point that the way cannot avoid. Built once for a
/// network in time linear in its links. Where a device has several switches the answer is found by search without the link or device instead.
/// </remarks>
internal sealed class NetworkCuts
{
    private const int None = -1;

    private readonly NetworkMap map;
    private readonly int network;
    private readonly IReadOnlyList<DeviceNode> devices;
    private readonly int[] deviceOf;
    private readonly int[] ringSetOf;
    private readonly List<int> sizes = [];
    private readonly LinkSearch search;

    public NetworkCuts(NetworkMap map, int network, int linkCount, IReadOnlyList<DeviceNode> devices)
    {
        this.map = map;
        this.network = network;
        this.devices = devices;
        search = new LinkSearch(map);
        deviceOf = Owners(map, devices);
        ringSetOf = new int[linkCount];
        Array.Fill(ringSetOf, None);
        FindRingSets();
    }

    /// <summary>True when the loss of a link parts what it joined.</summary>
    public bool IsBridge(int link) => ringSetOf[link] != None && sizes[ringSetOf[link]] == 1;

    /// <summary>Collects the links and the devices in between without which nothing gets from one device to another.</summary>
    public void Collect(DeviceNode from, DeviceNode to, Action<int> onLink, Action<int> onDevice)
    {
        if (from == to)
        {
            return;
        }

        var tree = map.Tree(network, from);
        var isSimple = map.SwitchesOf(from).Length == 1 && map.SwitchesOf(to).Length == 1;
        var before = None;
        for (var at = map.End(tree, to); at >= 0 && tree[at] >= 0; at = map.Other(tree[at], at))
        {
            var link = tree[at];
            if (before != None)
            {
                CheckDevice(from, to, deviceOf[at], ringSetOf[before] != ringSetOf[link], isSimple, onDevice);
            }

            if (IsBridge(link) && (isSimple || !Reaches(from, to, link, None)))
            {
                onLink(link);
            }

            before = link;
        }
    }

    /// <summary>True when a way is left without a link or a device; -1 for none.</summary>
    public bool Reaches(DeviceNode from, DeviceNode to, int withoutLink, int withoutDevice)
    {
        if (from.Index == withoutDevice || to.Index == withoutDevice)
        {
            return false;
        }

        return search.Find(
                map.SwitchesOf(from),
                at => deviceOf[at] == to.Index,
                (link, other) => link != withoutLink && map.NetworkOf(link) == network && deviceOf[other] != withoutDevice
            ) >= 0;
    }

    private static int[] Owners(NetworkMap map, IReadOnlyList<DeviceNode> devices)
    {
        var owners = new int[map.SwitchCount];
        foreach (var device in devices)
        {
            foreach (var at in map.SwitchesOf(device))
            {
                owners[at] = device.Index;
            }
        }

        return owners;
    }

    private void CheckDevice(DeviceNode from, DeviceNode to, int device, bool isArticulation, bool isSimple, Action<int> onDevice)
    {
        if (device == from.Index || device == to.Index)
        {
            return;
        }

        // Where everything is one switch, the articulation points on the way are exactly the cuts.
        if (isSimple && map.SwitchesOf(devices[device]).Length == 1 ? isArticulation : !Reaches(from, to, None, device))
        {
            onDevice(device);
        }
    }

    private void FindRingSets()
    {
        var entered = new int[map.SwitchCount];
        var low = new int[map.SwitchCount];
        var time = 0;
        var open = new Stack<int>();
        var walk = new Stack<(int At, int By, int Next)>();
        for (var root = 0; root < map.SwitchCount; root++)
        {
            if (entered[root] != 0)
            {
                continue;
            }

            entered[root] = low[root] = ++time;
            walk.Push((root, None, 0));
            while (walk.TryPop(out var step))
            {
                var links = map.LinksAt(step.At);
                if (step.Next == links.Length)
                {
                    if (step.By != None)
                    {
                        Close(step.At, map.Other(step.By, step.At), step.By, entered, low, open);
                    }

                    continue;
                }

                walk.Push(step with { Next = step.Next + 1 });
                var link = links[step.Next];
                var other = map.Other(link, step.At);
                if (map.NetworkOf(link) != network || link == step.By || entered[other] > entered[step.At])
                {
                    continue;
                }

                open.Push(link);
                if (entered[other] == 0)
                {
                    entered[other] = low[other] = ++time;
                    walk.Push((other, link, 0));
                }
                else
                {
                    low[step.At] = Math.Min(low[step.At], entered[other]);
                }
            }
        }
    }

    /// <summary>Goes back over a link: what was opened since belongs to one set when no ring leads further up.</summary>
    private void Close(int at, int up, int by, int[] entered, int[] low, Stack<int> open)
    {
        low[up] = Math.Min(low[up], low[at]);
        if (low[at] < entered[up])
        {
            return;
        }

        sizes.Add(0);
        for (var link = None; link != by; )
        {
            link = open.Pop();
            ringSetOf[link] = sizes.Count - 1;
            sizes[^1]++;
        }
    }
}
