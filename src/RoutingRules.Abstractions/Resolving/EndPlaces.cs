namespace RoutingRules.Resolving;

/// <summary>The points of a show at which somebody hears what arrives, and every point whose signal gets there.</summary>
/// <remarks>
/// Signal is followed over routes, factory routes, streams, cables, processing and splits, all cables of an output, and through either leg of a
/// selector. Loops end where they began. Made in time linear in points; immutable and thread safe.
/// </remarks>
internal sealed class EndPlaces
{
    private const byte Leads = 1;
    private const byte Ends = 2;

    private readonly SignalGraph graph;
    private readonly byte[] marks;

    private EndPlaces(SignalGraph graph, List<PointIndex> ends)
    {
        this.graph = graph;
        ends.Sort();
        All = ends;
        marks = ends.Count == 0 ? [] : new byte[graph.PointCount];
        var pending = new Stack<PointIndex>(ends);
        while (pending.TryPop(out var point))
        {
            if (marks[point.Value] != 0)
            {
                continue;
            }

            marks[point.Value] = Leads;
            foreach (var before in Before(graph, point))
            {
                pending.Push(before);
            }
        }

        foreach (var end in ends)
        {
            marks[end.Value] = Leads | Ends;
        }
    }

    /// <summary>The points, in ascending order.</summary>
    public IReadOnlyList<PointIndex> All { get; }

    /// <summary>Where somebody hears with earpieces or headphones. See <see cref="EndKinds.IsEar"/>.</summary>
    /// <remarks>
    /// A headphone output that only a factory route feeds, with no cable in it and no feed that names it, is the device's own for whoever works
    /// there, and left out.
    /// </remarks>
    public static EndPlaces Ears(ResolvedShow show)
    {
        var ends = Collect(show, EndKinds.IsEar);
        if (ends.Exists(end => IsBuiltIn(show.Graph, end)))
        {
            var named = Named(show);
            ends.RemoveAll(end => IsBuiltIn(show.Graph, end) && !named.Contains(end));
        }

        return new EndPlaces(show.Graph, ends);
    }

    /// <summary>Where loudspeakers sound. See <see cref="EndKinds.IsLoudspeaker"/>.</summary>
    public static EndPlaces Loudspeakers(ResolvedShow show) => new(show.Graph, Collect(show, EndKinds.IsLoudspeaker));

    /// <summary>True for a point that is one of them or whose signal gets to one; false for none.</summary>
    public bool Contains(PointIndex point) => All.Count > 0 && !point.IsNone && marks[point.Value] != 0;

    /// <summary>True for a point that is one of them.</summary>
    public bool IsEnd(PointIndex point) => All.Count > 0 && !point.IsNone && (marks[point.Value] & Ends) != 0;

    /// <summary>Those at which the signal of a point is heard, the point itself included, in ascending order.</summary>
    public List<PointIndex> Behind(PointIndex point)
    {
        var found = new List<PointIndex>();
        if (!Contains(point))
        {
            return found;
        }

        var seen = new HashSet<PointIndex>();
        var pending = new Stack<PointIndex>([point]);
        while (pending.TryPop(out var next))
        {
            if (!Contains(next) || !seen.Add(next))
            {
                continue;
            }

            if (IsEnd(next))
            {
                found.Add(next);
            }

            foreach (var fed in graph.Fed(next))
            {
                pending.Push(new PointIndex(fed));
            }

            foreach (var output in Selectors.Outputs(graph, next))
            {
                pending.Push(output);
            }
        }

        found.Sort();
        return found;
    }

    /// <summary>The points that bring signal to a point: the one that feeds it, or the legs of the selector it comes out of.</summary>
    public static IReadOnlyList<PointIndex> Before(SignalGraph graph, PointIndex point) =>
        graph.Upstream(point) is { IsNone: false } upstream ? [upstream] : Selectors.Legs(graph, point);

    private static List<PointIndex> Collect(ResolvedShow show, Func<DeviceNode, GroupNode, bool> isEnd)
    {
        var ends = new List<PointIndex>();
        foreach (var device in show.Devices)
        {
            foreach (var group in device.Groups)
            {
                var count = isEnd(device, group) ? group.Count : 0;
                for (var i = 0; i < count; i++)
                {
                    ends.Add(device.First(group) + i);
                }
            }
        }

        return ends;
    }

    private static bool IsBuiltIn(SignalGraph graph, PointIndex end) =>
        EndKinds.IsHeadphone(graph.GroupOf(end)) && graph.Via(end) == HopKind.Factory && graph.Fed(end).IsEmpty;

    private static HashSet<PointIndex> Named(ResolvedShow show)
    {
        var named = new HashSet<PointIndex>();
        foreach (var demand in show.Demands)
        {
            for (var position = 0; demand.Feed is { } feed && position < demand.Width; position++)
            {
                if (feed.Model.To[demand.Entry].At is { } at && show.Graph.Find(at, out var first) == ConnectionState.Connected)
                {
                    named.Add(first + position);
                }

                if (!demand.Existing.IsNone)
                {
                    named.Add(demand.Existing + position);
                }
            }
        }

        return named;
    }
}
