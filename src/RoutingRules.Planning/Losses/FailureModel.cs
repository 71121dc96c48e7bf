using RoutingRules.Resolving;

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
    private readonly PathsLeft paths;
    private readonly List<int>[] carriedOf;
    private readonly Arrivals arrivals;
    private readonly bool[] isSilent;
    private readonly int[] mark;
    private int round;
    private long work;

    public FailureModel(ResolvedShow show)
    {
        this.show = show;
        graph = show.Graph;
        mark = new int[graph.PointCount];
        isSilent = new bool[graph.PointCount];
        carriedOf = [.. show.Links.Select(_ => new List<int>())];
        for (var point = 0; point < graph.PointCount; point++)
        {
            if (graph.Via(new PointIndex(point)) == HopKind.Carrier)
            {
                carriedOf[graph.ViaIndex(new PointIndex(point))].Add(point);
            }
        }

        paths = new PathsLeft(show);
        FindSilence(paths.Unreached);
        arrivals = new Arrivals(show, IsSilent);
    }

    public ResolvedShow Show => show;

    public List<Arrival> Deliveries => arrivals.Deliveries;

    /// <summary>Feeds, then lines; also those that arrive nowhere.</summary>
    public List<LossSubject> Subjects => arrivals.Subjects;

    /// <summary>Keys of demands that do not arrive as the show stands, in demand order.</summary>
    public List<string> NotArriving => arrivals.NotArriving;

    /// <summary>The deliveries that end at a point.</summary>
    public Dictionary<int, List<int>> DeliveriesAt => arrivals.At;

    /// <summary>Points, links and ways looked at since the model was made: what a test can hold.</summary>
    public long Work => work + paths.Work;

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
            work++;
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
    public int NetworkOf(PointIndex slot) => paths.NetworkOf(slot);

    /// <summary>The links of a shortest way that is left; empty where the network names none, null when there is no way.</summary>
    public List<int>? Way(int network, DeviceNode from, DeviceNode to, LossSet lost) => paths.Way(network, from, to, lost);

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

        var touched = new bool[show.Document.Rig.Networks.Count];
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
            if (touched[network])
            {
                paths.Cut(network, lost, rerouted).ForEach(slot => Reach(slot, reached));
            }
        }
    }

    private void Reach(int point, List<int> reached)
    {
        work++;
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
