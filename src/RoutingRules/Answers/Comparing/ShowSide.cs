using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Answers.Comparing;

/// <summary>One of two shows that are compared: what its points carry and serve.</summary>
internal sealed class ShowSide
{
    private readonly Dictionary<int, DemandNode> byInput = [];
    private readonly Dictionary<int, DemandNode> bySink = [];

    public ShowSide(ResolvedShow show)
    {
        Show = show;
        foreach (var demand in show.Demands)
        {
            if (demand.Feed is not null)
            {
                Put(bySink, demand.Existing, demand);
                continue;
            }

            foreach (var sink in demand.Line!.Sinks)
            {
                Put(bySink, sink, demand);
            }

            if (!demand.Line.Source.IsNone)
            {
                Put(byInput, demand.Line.Source, demand);
            }
            else
            {
                Put(byInput, demand.Existing, demand);
                foreach (var at in demand.Line.Model.From.At)
                {
                    if (show.Graph.Find(at, out var first) == ConnectionState.Connected)
                    {
                        Put(byInput, first, demand);
                    }
                }
            }
        }
    }

    public ResolvedShow Show { get; }

    public SignalGraph Graph => Show.Graph;

    /// <summary>The points whose signal matters in the end: outputs, and sinks inside devices.</summary>
    public IEnumerable<PointIndex> Sinks() => SinksOf(Show);

    /// <summary>The outputs of a show, and the sinks inside its devices, in rig order; of two devices with one id those of the one that addresses mean.</summary>
    public static IEnumerable<PointIndex> SinksOf(ResolvedShow show) =>
        from device in show.Devices
        where show.Graph.Device(device.Id) == device
        from @group in (IEnumerable<GroupNode>)device.Groups
        where @group.Kind is PortKind.Output or PortKind.Sink
        from i in Enumerable.Range(0, @group.Count)
        select device.First(@group) + i;

    /// <summary>The address of the real source a point carries; null for none.</summary>
    public Point? Source(PointIndex sink) => sink.IsNone || Graph.Origin(sink) is not { IsNone: false } source ? null : Graph.Address(source);

    /// <summary>What is plugged in, or born, at the source of a point, where the show says so.</summary>
    public DemandNode? LineBehind(PointIndex sink) => sink.IsNone ? null : byInput.GetValueOrDefault(Graph.Origin(sink).Value);

    /// <summary>The feed or line that a sink serves.</summary>
    public DemandNode? Served(PointIndex sink) => sink.IsNone ? null : bySink.GetValueOrDefault(sink.Value);

    /// <summary>The line plugged in at an input.</summary>
    public DemandNode? LineAt(PointIndex input) => input.IsNone ? null : byInput.GetValueOrDefault(input.Value);

    /// <summary>True when the point, or one its signal goes on to, serves an in-ear feed.</summary>
    public bool LeadsToEars(PointIndex point) => LeadsTo(point, FeedRole.InEar);

    /// <summary>True when the point, or one its signal goes on to, serves a feed of a role.</summary>
    public bool LeadsTo(PointIndex point, FeedRole role)
    {
        if (point.IsNone)
        {
            return false;
        }

        if (Served(point)?.Feed?.Model.Role == role)
        {
            return true;
        }

        // Only what comes after the output counts, not what else its source feeds.
        return Graph.GroupOf(point).Kind == PortKind.Output && Graph.Carrying(point).Any(next => Served(next)?.Feed?.Model.Role == role);
    }

    private static void Put(Dictionary<int, DemandNode> map, PointIndex first, DemandNode demand)
    {
        for (var i = 0; !first.IsNone && i < demand.Width; i++)
        {
            map.TryAdd(first.Value + i, demand);
        }
    }
}
