using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Comparing;

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

    /// <summary>
    /// The points whose signal matters in the end: outputs, sinks inside devices, and receive slots at which somebody hears it or a loudspeaker plays it.
    /// </summary>
    public IEnumerable<PointIndex> Sinks() => SinksOf(Show);

    /// <summary>The same points of a show, in rig order; of two devices with one id those of the one that addresses mean.</summary>
    public static IEnumerable<PointIndex> SinksOf(ResolvedShow show) =>
        from device in show.Devices
        where show.Graph.Device(device.Id) == device
        from @group in (IEnumerable<GroupNode>)device.Groups
        where @group.Kind is PortKind.Output or PortKind.Sink or PortKind.Receive
        from i in Enumerable.Range(0, @group.Count)
        let point = device.First(@group) + i
        where @group.Kind != PortKind.Receive || IsEnd(show, point)
        select point;

    /// <summary>True where signal ends in somebody's ears or at a loudspeaker.</summary>
    public static bool IsEnd(ResolvedShow show, PointIndex point) => show.Ears.IsEnd(point) || show.Loudspeakers.IsEnd(point);

    /// <summary>The address of the real source a point carries; null for none.</summary>
    public Point? Source(PointIndex sink) => sink.IsNone || Graph.Origin(sink) is not { IsNone: false } source ? null : Graph.Address(source);

    /// <summary>What is plugged in, or born, at the source of a point, where the show says so.</summary>
    public DemandNode? LineBehind(PointIndex sink) => sink.IsNone ? null : byInput.GetValueOrDefault(Graph.Origin(sink).Value);

    /// <summary>The feed or line that a sink serves.</summary>
    public DemandNode? Served(PointIndex sink) => sink.IsNone ? null : bySink.GetValueOrDefault(sink.Value);

    /// <summary>The line plugged in at an input.</summary>
    public DemandNode? LineAt(PointIndex input) => input.IsNone ? null : byInput.GetValueOrDefault(input.Value);

    /// <summary>True when what the point carries is heard in somebody's ears, or serves an in-ear feed there, on the way or behind it.</summary>
    public bool LeadsToEars(PointIndex point) => !point.IsNone && (Show.Ears.Contains(point) || FeedsAt(point).Any(feed => feed.Model.Role == FeedRole.InEar));

    /// <summary>True when a feed is served there, on the way or behind it that is in-ear, or ends in somebody's ears and may be meant for them.</summary>
    public bool CarriesEarMix(PointIndex point) =>
        FeedsAt(point).Any(feed => feed.Model.Role == FeedRole.InEar || (Show.Ears.Contains(point) && FeedRoles.MayBeForEars(feed.Model.Role)));

    /// <summary>The feeds served at a point; at an output those on the way to it and behind it as well, from the source on.</summary>
    public IEnumerable<FeedNode> FeedsAt(PointIndex point)
    {
        var isOutput = !point.IsNone && Graph.GroupOf(point).Kind == PortKind.Output;
        var way = new List<PointIndex>();
        for (var at = point; !at.IsNone && !way.Contains(at) && (isOutput || at == point); at = Graph.Upstream(at))
        {
            way.Add(at);
        }

        // Only what comes after the output counts, not what else its source feeds.
        way.Reverse();
        return way.Concat(isOutput ? Graph.Carrying(point) : []).Select(at => Served(at)?.Feed).OfType<FeedNode>().Distinct();
    }

    private static void Put(Dictionary<int, DemandNode> map, PointIndex first, DemandNode demand)
    {
        for (var i = 0; !first.IsNone && i < demand.Width; i++)
        {
            map.TryAdd(first.Value + i, demand);
        }
    }
}
