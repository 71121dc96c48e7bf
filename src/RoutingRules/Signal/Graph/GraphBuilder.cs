using RoutingRules.Resolving;

namespace RoutingRules.Signal.Graph;

/// <summary>A signal graph in the making. Of several claims on one sink the first in document order counts.</summary>
internal sealed partial class GraphBuilder
{
    private readonly DeviceNode[] devices;
    private readonly Dictionary<string, int> deviceIndex;
    private readonly int[] upstream;
    private readonly HopKind[] via;
    private readonly int[] viaIndex;
    private readonly SignalGraph graph;

    public GraphBuilder(DeviceNode[] devices, Dictionary<string, int> deviceIndex, int pointCount)
    {
        this.devices = devices;
        this.deviceIndex = deviceIndex;
        upstream = new int[pointCount];
        via = new HopKind[pointCount];
        viaIndex = new int[pointCount];
        graph = new SignalGraph(devices, deviceIndex, upstream, via, viaIndex, []);
    }

    public List<SinkConflict> Conflicts { get; } = [];

    public List<IdleRoute> IdleRoutes { get; } = [];

    public void CopyProfiles()
    {
        Array.Fill(viaIndex, -1);
        foreach (var device in devices)
        {
            var type = device.Type;
            type.Via.CopyTo(via.AsSpan(device.FirstPoint));
            var target = upstream.AsSpan(device.FirstPoint, type.PointCount);
            for (var i = 0; i < target.Length; i++)
            {
                var local = type.Upstream[i];
                target[i] = local < 0 ? -1 : local + device.FirstPoint;
            }
        }
    }

    public SignalGraph Build() => new(devices, deviceIndex, upstream, via, viaIndex, Origins());

    /// <summary>Connects a sink unless something of the document has claimed it before.</summary>
    private void Claim(int sink, int from, HopKind kind, int index, int receiver = 0)
    {
        if (via[sink] is HopKind.Route or HopKind.Cleared or HopKind.Stream or HopKind.Cable or HopKind.Carrier)
        {
            Conflicts.Add(
                new SinkConflict
                {
                    Sink = new PointIndex(sink),
                    FirstKind = via[sink],
                    FirstIndex = viaIndex[sink],
                    OtherKind = kind,
                    OtherIndex = index,
                    OtherReceiver = receiver,
                    OtherFrom = new PointIndex(from),
                }
            );
            return;
        }

        upstream[sink] = from;
        via[sink] = kind;
        viaIndex[sink] = index;
    }

    /// <summary>For each point the real source it carries, found by following upstream once; each point is visited twice at most.</summary>
    private int[] Origins()
    {
        const int unknown = -3;
        const int underWay = -4;
        var origin = new int[upstream.Length];
        Array.Fill(origin, unknown);
        var chain = new List<int>();
        foreach (var device in devices)
        {
            for (var local = 0; local < device.Type.PointCount; local++)
            {
                var point = device.FirstPoint + local;
                chain.Clear();
                while (origin[point] == unknown && upstream[point] >= 0)
                {
                    origin[point] = underWay;
                    chain.Add(point);
                    point = upstream[point];
                }

                var found = origin[point] switch
                {
                    unknown => Terminal(point),
                    underWay => SignalGraph.Looping,
                    var known => known,
                };
                origin[point] = found;
                foreach (var passed in chain)
                {
                    origin[passed] = found;
                }
            }
        }

        return origin;
    }

    private int Terminal(int point)
    {
        var index = new PointIndex(point);
        return via[point] != HopKind.Cleared && graph.GroupOf(index).IsOrigin ? point : SignalGraph.Silent;
    }
}
