namespace RoutingRules.Resolving;

/// <summary>The points of a show at which somebody hears what arrives, and every point whose signal gets there.</summary>
/// <remarks>
/// Signal is followed over routes, factory routes, streams, cables, processing and splits, all cables of an output, and through either leg of a
/// selector. Loops end where they began. Made in time linear in points; immutable and thread safe.
/// </remarks>
internal sealed class EndPlaces
{
    private readonly SignalGraph graph;

    /// <summary>The points whose signal gets to an end, and the ends; null without any.</summary>
    private readonly PointSet? leading;
    private readonly PointSet? ending;

    private EndPlaces(SignalGraph graph, List<PointIndex> ends)
    {
        this.graph = graph;
        ends.Sort();
        All = ends;
        if (ends.Count == 0)
        {
            return;
        }

        leading = new PointSet(graph.PointCount);
        ending = new PointSet(graph.PointCount);
        foreach (var end in ends)
        {
            ending.Add(end.Value);
            MarkUp(leading, end);
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
    public bool Contains(PointIndex point) => leading?.Contains(point) == true;

    /// <summary>True for a point that is one of them.</summary>
    public bool IsEnd(PointIndex point) => ending?.Contains(point) == true;

    /// <summary>Those at which the signal of a point is heard, the point itself included, in ascending order.</summary>
    public List<PointIndex> Behind(PointIndex point)
    {
        var found = new List<PointIndex>();
        if (!Contains(point))
        {
            return found;
        }

        // Every point has one that feeds it, so that before the first selector only the start can be met again.
        HashSet<PointIndex>? seen = null;
        List<PointIndex>? passed = null;
        for (var done = -1; done < (passed?.Count ?? 0); done++)
        {
            var next = done < 0 ? point : passed![done];
            if (IsEnd(next))
            {
                found.Add(next);
            }

            foreach (var fed in graph.Fed(next))
            {
                Pass(new PointIndex(fed));
            }

            var outputs = Selectors.Outputs(graph, next);
            for (var i = 0; i < outputs.Count; i++)
            {
                seen ??= [point, .. passed ?? []];
                Pass(outputs[i]);
            }
        }

        found.Sort();
        return found;

        void Pass(PointIndex next)
        {
            if (Contains(next) && (seen?.Add(next) ?? next != point))
            {
                (passed ??= []).Add(next);
            }
        }
    }

    /// <summary>The points that bring signal to a point: the one that feeds it, or the legs of the selector it comes out of.</summary>
    public static IReadOnlyList<PointIndex> Before(SignalGraph graph, PointIndex point) =>
        graph.Upstream(point) is { IsNone: false } upstream ? [upstream] : Selectors.Legs(graph, point);

    /// <summary>Marks a point and what brings signal to it, as far as that is not marked yet.</summary>
    private void MarkUp(PointSet marked, PointIndex start)
    {
        Stack<PointIndex>? pending = null;
        for (var point = start; ; )
        {
            while (!point.IsNone && !marked.Contains(point))
            {
                marked.Add(point.Value);
                var upstream = graph.Upstream(point);
                var legs = upstream.IsNone ? Selectors.Legs(graph, point) : [];
                for (var i = 0; i < legs.Count; i++)
                {
                    (pending ??= new()).Push(legs[i]);
                }

                point = upstream;
            }

            if (pending is null || !pending.TryPop(out point))
            {
                return;
            }
        }
    }

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
