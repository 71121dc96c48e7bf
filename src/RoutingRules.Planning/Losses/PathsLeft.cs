using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Planning.Losses;

/// <summary>The paths of streams over the network, and what is left of them after a loss.</summary>
internal sealed class PathsLeft
{
    private readonly ResolvedShow show;
    private readonly SignalGraph graph;
    private readonly NetworkMap map;
    private readonly LinkSearch search;
    private readonly List<int>[] linksOf;
    private readonly List<NetworkPath>[] waysOf;

    public PathsLeft(ResolvedShow show)
    {
        this.show = show;
        graph = show.Graph;
        map = show.Network;
        search = new LinkSearch(map);
        linksOf = [.. show.Document.Rig.Networks.Select(_ => new List<int>())];
        waysOf = [.. show.Document.Rig.Networks.Select(_ => new List<NetworkPath>())];
        foreach (var link in show.Links)
        {
            if (link.State == ConnectionState.Connected && map.SwitchFrom(link.Index) >= 0)
            {
                linksOf[link.Network].Add(link.Index);
            }
        }

        FindWays();
    }

    /// <summary>Links and paths looked at.</summary>
    public long Work { get; private set; }

    /// <summary>Slots of streams that no way leads to as the show stands.</summary>
    public List<int> Unreached { get; } = [];

    /// <summary>The network of the stream that reaches a point; -1 when unknown.</summary>
    public int NetworkOf(PointIndex slot) => map.IndexOf(show.Streams[graph.ViaIndex(slot)].Model.Network);

    /// <summary>The links of a shortest way that is left; empty where the network names none, null when there is no way.</summary>
    public List<int>? Way(int network, DeviceNode from, DeviceNode to, LossSet lost)
    {
        if (network < 0 || lost.Devices[from.Index] || lost.Devices[to.Index])
        {
            return null;
        }

        if (!map.HasLinks(network) || from == to)
        {
            return map.IsOn(network, from) && map.IsOn(network, to) ? [] : null;
        }

        var end = search.Find(map.SwitchesOf(from), at => map.SwitchesOf(to).Contains(at), Passes);
        if (end < 0)
        {
            return null;
        }

        var way = search.Back(end);
        way.Reverse();
        return way;

        bool Passes(int link, int other)
        {
            Work++;
            return !lost.Links[link] && map.NetworkOf(link) == network;
        }
    }

    /// <summary>The slots of a network that a loss of links cuts off; paths that go another way are added to a list.</summary>
    public List<int> Cut(int network, LossSet lost, List<NetworkPath>? rerouted)
    {
        var cut = new List<int>();
        if (waysOf[network].Count == 0)
        {
            return cut;
        }

        var joined = new DisjointSets(map.SwitchCount);
        foreach (var link in linksOf[network])
        {
            Work++;
            if (!lost.Links[link])
            {
                joined.Join(map.SwitchFrom(link), map.SwitchTo(link));
            }
        }

        foreach (var way in waysOf[network])
        {
            Work++;
            if (lost.Devices[way.From.Index] || lost.Devices[way.To.Index])
            {
                continue;
            }

            if (!AreJoined(joined, way))
            {
                cut.AddRange(way.Slots);
            }
            else if (rerouted is not null && way.Links!.Any(link => lost.Links[link]))
            {
                rerouted.Add(way);
            }
        }

        return cut;
    }

    private bool AreJoined(DisjointSets joined, NetworkPath way)
    {
        foreach (var from in map.SwitchesOf(way.From))
        {
            foreach (var to in map.SwitchesOf(way.To))
            {
                if (joined.Find(from) == joined.Find(to))
                {
                    return true;
                }
            }
        }

        return way.From == way.To;
    }

    /// <summary>Groups the slots that streams reach by network, sender and receiver.</summary>
    private void FindWays()
    {
        var ways = new Dictionary<(int Network, int From, int To), NetworkPath>();
        foreach (var device in show.Devices)
        {
            for (var point = device.FirstPoint; point < device.FirstPoint + device.Type.PointCount; point++)
            {
                var at = new PointIndex(point);
                if (graph.Via(at) != HopKind.Stream)
                {
                    continue;
                }

                var network = NetworkOf(at);
                var from = graph.DeviceOf(graph.Upstream(at));
                if (!ways.TryGetValue((network, from.Index, device.Index), out var way))
                {
                    way = new NetworkPath
                    {
                        Network = network,
                        From = from,
                        To = device,
                        Links = network < 0 ? null : map.Path(network, from, device),
                    };
                    ways.Add((network, from.Index, device.Index), way);
                    if (way.Links is not null && map.HasLinks(network))
                    {
                        waysOf[network].Add(way);
                    }
                }

                way.Slots.Add(point);
                way.Streams.Add(graph.ViaIndex(at));
                if (way.Links is null)
                {
                    Unreached.Add(point);
                }
            }
        }
    }
}
