using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Planning.Losses;

/// <summary>A show laid out so that the effect of a loss is found from what is lost, without resolving the show again.</summary>
/// <remarks>
/// What is lost silences its points; silence goes down from there to all that is fed. For the network a loss costs one pass over its links, which joins what
/// is still joined, and one look at each way between a sender and a receiver. A stream follows any way that is left.
/// </remarks>
internal sealed class FailureModel
{
    private readonly ResolvedShow show;
    private readonly SignalGraph graph;
    private readonly NetworkMap map;
    private readonly LinkSearch search;
    private readonly List<int>[] linksOf;
    private readonly List<NetworkPath>[] waysOf;
    private readonly List<int>[] carriedOf;
    private readonly bool[] isSilent;
    private readonly int[] mark;
    private int round;

    public FailureModel(ResolvedShow show)
    {
        this.show = show;
        graph = show.Graph;
        map = show.Network;
        search = new LinkSearch(map);
        mark = new int[graph.PointCount];
        isSilent = new bool[graph.PointCount];
        linksOf = Lists<int>(show.Document.Rig.Networks.Count);
        waysOf = Lists<NetworkPath>(show.Document.Rig.Networks.Count);
        carriedOf = Lists<int>(show.Links.Count);
        foreach (var link in show.Links)
        {
            if (link.State == ConnectionState.Connected && map.SwitchFrom(link.Index) >= 0)
            {
                linksOf[link.Network].Add(link.Index);
            }
        }

        FindSilence(FindWays());
        ArrivalFinder.Find(this, show, Deliveries, Subjects, NotArriving);
        foreach (var (at, delivery) in Deliveries.SelectMany((delivery, i) => delivery.Ends.Select(end => (end, i))))
        {
            if (!DeliveriesAt.TryGetValue(at, out var list))
            {
                DeliveriesAt.Add(at, list = []);
            }

            list.Add(delivery);
        }
    }

    public ResolvedShow Show => show;

    public List<Arrival> Deliveries { get; } = [];

    /// <summary>Feeds, then lines; also those that arrive nowhere.</summary>
    public List<LossSubject> Subjects { get; } = [];

    /// <summary>Keys of demands that do not arrive as the show stands, in demand order.</summary>
    public List<string> NotArriving { get; } = [];

    /// <summary>The deliveries that end at a point.</summary>
    public Dictionary<int, List<int>> DeliveriesAt { get; } = [];

    /// <summary>Points, links and ways looked at since the model was made: what a test can hold.</summary>
    public long Work { get; private set; }

    /// <summary>True for a point that carries nothing as the show stands.</summary>
    public bool IsSilent(int point) => isSilent[point];

    public LossSet NewSet() => new(show.Devices.Count, show.Links.Count, show.Cables.Count);

    /// <summary>The points that fall silent, in ascending order.</summary>
    public List<int> Silenced(LossSet lost, List<NetworkPath>? rerouted = null)
    {
        round++;
        var reached = new List<int>();
        Seed(lost, reached, rerouted);
        Spread(reached);
        reached.RemoveAll(point => isSilent[point]);
        reached.Sort();
        return reached;
    }

    /// <summary>True when a point that carries its source goes on doing so.</summary>
    public bool Sounds(int point, LossSet lost)
    {
        for (var at = new PointIndex(point); !isSilent[point]; at = graph.Upstream(at))
        {
            Work++;
            if (lost.Devices[graph.DeviceOf(at).Index] || lost.Points.Contains(at.Value))
            {
                return false;
            }

            var before = graph.Upstream(at);
            if (before.IsNone)
            {
                return true;
            }

            var isWhole = graph.Via(at) switch
            {
                HopKind.Cable => !lost.Cables[graph.ViaIndex(at)],
                HopKind.Carrier => !lost.Links[graph.ViaIndex(at)],
                HopKind.Stream => Way(NetworkOf(at), graph.DeviceOf(before), graph.DeviceOf(at), lost) is not null,
                _ => true,
            };
            if (!isWhole)
            {
                return false;
            }
        }

        return false;
    }

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

    private static List<T>[] Lists<T>(int count) => [.. Enumerable.Range(0, count).Select(_ => new List<T>())];

    /// <summary>Groups the slots that streams reach by network, sender and receiver; gives back those that no way leads to.</summary>
    private List<int> FindWays()
    {
        var ways = new Dictionary<(int Network, int From, int To), NetworkPath>();
        var unreached = new List<int>();
        foreach (var device in show.Devices)
        {
            for (var point = device.FirstPoint; point < device.FirstPoint + device.Type.PointCount; point++)
            {
                var at = new PointIndex(point);
                if (graph.Via(at) == HopKind.Carrier)
                {
                    carriedOf[graph.ViaIndex(at)].Add(point);
                }

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
                    unreached.Add(point);
                }
            }
        }

        return unreached;
    }

    private void FindSilence(List<int> unreached)
    {
        var origins = graph.Origins;
        for (var point = 0; point < origins.Length; point++)
        {
            isSilent[point] = origins[point] < 0;
        }

        round++;
        foreach (var point in unreached)
        {
            mark[point] = round;
        }

        Spread(unreached);
        foreach (var point in unreached)
        {
            isSilent[point] = true;
        }
    }

    private void Seed(LossSet lost, List<int> reached, List<NetworkPath>? rerouted)
    {
        for (var i = 0; i < lost.Devices.Length; i++)
        {
            var device = show.Devices[i];
            for (var local = 0; lost.Devices[i] && local < device.Type.PointCount; local++)
            {
                Reach(device.FirstPoint + local, reached);
            }
        }

        for (var i = 0; i < lost.Cables.Length; i++)
        {
            var cable = show.Cables[i];
            for (var position = 0; lost.Cables[i] && cable.State == ConnectionState.Connected && position < cable.Model.To.Width; position++)
            {
                var at = cable.To + position;
                if (graph.Via(at) == HopKind.Cable && graph.ViaIndex(at) == i)
                {
                    Reach(at.Value, reached);
                }
            }
        }

        foreach (var point in lost.Points)
        {
            Reach(point, reached);
        }

        var touched = new bool[linksOf.Length];
        for (var i = 0; i < lost.Links.Length; i++)
        {
            if (lost.Links[i])
            {
                carriedOf[i].ForEach(point => Reach(point, reached));
                touched[Math.Max(show.Links[i].Network, 0)] |= show.Links[i].Network >= 0;
            }
        }

        for (var network = 0; network < touched.Length; network++)
        {
            if (touched[network] && waysOf[network].Count > 0)
            {
                SeedNetwork(network, lost, reached, rerouted);
            }
        }
    }

    private void SeedNetwork(int network, LossSet lost, List<int> reached, List<NetworkPath>? rerouted)
    {
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
                way.Slots.ForEach(slot => Reach(slot, reached));
            }
            else if (rerouted is not null && way.Links!.Any(link => lost.Links[link]))
            {
                rerouted.Add(way);
            }
        }
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

    private void Reach(int point, List<int> reached)
    {
        Work++;
        if (mark[point] != round)
        {
            mark[point] = round;
            reached.Add(point);
        }
    }

    private void Spread(List<int> reached)
    {
        for (var i = 0; i < reached.Count; i++)
        {
            foreach (var fed in graph.Fed(new PointIndex(reached[i])))
            {
                Reach(fed, reached);
            }
        }
    }
}
