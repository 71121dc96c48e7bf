using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Tracing;

/// <summary>Follows a signal through a show in both directions.</summary>
internal sealed class Tracer
{
    private readonly ResolvedShow show;
    private readonly SignalGraph graph;
    private readonly Dictionary<(string Device, string Group), List<PointLabel>> labels = [];
    private readonly Dictionary<(int Network, int From, int To), IReadOnlyList<int>?> paths = [];

    private Tracer(ResolvedShow show)
    {
        this.show = show;
        graph = show.Graph;
        foreach (var label in show.Document.Patch.Labels)
        {
            var group = (label.At.Device.Value, label.At.Group.Value);
            if (!labels.TryGetValue(group, out var list))
            {
                labels.Add(group, list = []);
            }

            list.Add(label);
        }
    }

    /// <summary>Traces a point.</summary>
    public static SignalTrace Trace(ResolvedShow show, PointIndex at) => new Tracer(show).Trace(at);

    private SignalTrace Trace(PointIndex at)
    {
        var hops = new List<TraceHop>();
        var seen = new HashSet<int> { at.Value };
        var first = at;
        for (var before = graph.Upstream(at); !before.IsNone; before = graph.Upstream(before))
        {
            hops.Add(Hop(before, first));
            first = before;
            if (!seen.Add(before.Value))
            {
                break;
            }
        }

        hops.Reverse();
        var startAt = Describe(first);
        var start = Start(first);
        return new SignalTrace
        {
            At = Describe(at),
            Upstream = hops.ToValueList(),
            Start = start,
            StartAt = startAt,
            StartReason = Explain(start, first, startAt.At),
            Downstream = Downstream(at),
        };
    }

    private ValueList<TraceBranch> Downstream(PointIndex at)
    {
        var branches = new List<TraceBranch>();
        var pending = new Stack<(int From, int To, int Depth)>();
        Push(at.Value, 1);
        while (pending.TryPop(out var next))
        {
            var end = next.To == at.Value || graph.Fed(new PointIndex(next.To)).IsEmpty;
            branches.Add(
                new TraceBranch
                {
                    Depth = next.Depth,
                    Hop = Hop(new PointIndex(next.From), new PointIndex(next.To)),
                    IsEnd = end,
                }
            );
            if (!end)
            {
                Push(next.To, next.Depth + 1);
            }
        }

        return branches.ToValueList();

        void Push(int from, int depth)
        {
            var fed = graph.Fed(new PointIndex(from));
            for (var i = fed.Length - 1; i >= 0; i--)
            {
                pending.Push((from, fed[i], depth));
            }
        }
    }

    private TraceHop Hop(PointIndex from, PointIndex to)
    {
        var kind = graph.Via(to);
        var index = graph.ViaIndex(to);
        var hop = new TraceHop
        {
            From = Describe(from),
            To = Describe(to),
            Kind = kind,
            Index = index < 0 ? null : index,
        };
        return kind switch
        {
            HopKind.Stream => Stream(hop, show.Streams[index].Model, from, to),
            HopKind.Carrier => hop with { Id = show.Links[index].Model.Id.Value, Links = [show.Links[index].Model.Id] },
            HopKind.Cable => hop with { Way = show.Cables[index].Model.Way },
            HopKind.Through => hop with
            {
                LatencyMilliseconds = StatedLatency.Through(graph.DeviceOf(to).Profile, graph.GroupOf(from).Id, graph.GroupOf(to).Id)?.LatencyMilliseconds,
            },
            _ => hop,
        };
    }

    private TraceHop Stream(TraceHop hop, AudioStream stream, PointIndex from, PointIndex to)
    {
        var network = show.Network.IndexOf(stream.Network);
        var path = network < 0 ? null : Path(network, graph.DeviceOf(from), graph.DeviceOf(to));
        return hop with
        {
            Id = stream.Id.Value,
            StreamChannel = hop.From.At.Number - stream.From.First + 1,
            TransmitBlock = Block(from, hop.From.At.Number),
            ReceiveBlock = Block(to, hop.To.At.Number),
            Links = path is null ? default : path.Select(link => show.Links[link].Model.Id).ToValueList(),
            IsReachable = path is not null,
            LatencyMilliseconds = network < 0 ? null : PacketTime.UntilGivenOut(show.Document.Rig.Networks[network]),
        };
    }

    private IReadOnlyList<int>? Path(int network, DeviceNode from, DeviceNode to)
    {
        var key = (network, from.Index, to.Index);
        if (!paths.TryGetValue(key, out var path))
        {
            paths.Add(key, path = show.Network.Path(network, from, to));
        }

        return path;
    }

    private int Block(PointIndex point, int number) => ((number - 1) / graph.GroupOf(point).BlockSize) + 1;

    private TracePoint Describe(PointIndex point)
    {
        var at = graph.Address(point);
        var group = graph.GroupOf(point);
        var mark = show.MarkOf(point);
        return new TracePoint
        {
            At = at,
            Kind = group.Kind,
            Label = Label(at),
            IsDead = mark is { IsDead: true },
            IsReserved = mark is { IsDead: false },
            MarkReason = mark?.Reason,
            LatencyMilliseconds = StatedLatency.Of(graph.DeviceOf(point).Profile, group.Id),
        };
    }

    private string? Label(Point at)
    {
        foreach (var label in labels.GetValueOrDefault((at.Device.Value, at.Group.Value)) ?? [])
        {
            if (at.Number >= label.At.First && at.Number <= label.At.Last)
            {
                return label.Text;
            }
        }

        return null;
    }

    private TraceStart Start(PointIndex first)
    {
        var group = graph.GroupOf(first);
        return graph.IsLooping(first) ? TraceStart.Loop
            : graph.Via(first) == HopKind.Cleared ? TraceStart.Cleared
            : group.Kind == PortKind.Network ? TraceStart.Jack
            : group.Kind == PortKind.Receive ? TraceStart.EmptySlot
            : !group.IsOrigin ? TraceStart.NothingRouted
            : group.Kind switch
            {
                PortKind.Source => TraceStart.Source,
                PortKind.Input => TraceStart.OpenInput,
                _ => TraceStart.Selector,
            };
    }

    private string Explain(TraceStart start, PointIndex first, Point at) =>
        start switch
        {
            TraceStart.Source => $"{at} is a source inside the device.",
            TraceStart.OpenInput => $"{at} is an input without a cable in the document: the signal is what is plugged in there.",
            TraceStart.Selector => $"{at} is the output of a selector, which counts as a source.",
            TraceStart.Cleared =>
                $"Route {graph.ViaIndex(first) + 1} of the patch clears {at}, so it is silent on purpose; route a source to it to let it sound.",
            TraceStart.Loop => $"{at} feeds itself over the steps shown, so no signal enters; take one of the routes, streams or cables of the loop away.",
            TraceStart.Jack => $"{at} is a network jack: it carries streams but is no audio channel; ask about a transmit or receive slot.",
            TraceStart.EmptySlot when graph.GroupOf(first).IsCarrier =>
                $"Nothing arrives at {at}: its multicore jack has no link to a sender of that slot; add the link, or use another slot.",
            TraceStart.EmptySlot => $"No stream arrives at {at}, so it is silent; let a stream end there, or use another slot.",
            _ when graph.FixedSource(first) is { IsNone: true } => $"The device gives {at} no source, so it is always silent; use another point.",
            _ => $"Nothing is routed to {at}, so it is silent; route a source to it.",
        };
}
