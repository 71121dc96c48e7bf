using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>Finds which allowed run serves each demand in the patch as it stands.</summary>
/// <remarks>
/// As many demands as possible are served by disjoint runs; points in order come before dead ones; ties go to earlier demands, then to earlier
/// devices and lower numbers. A line is served at the input that most of its sinks trace to.
/// </remarks>
internal static class ExistingPlacements
{
    /// <summary>Sets what serves each demand.</summary>
    /// <param name="demands">The demands, in demand order.</param>
    /// <param name="graph">The graph.</param>
    /// <param name="marks">Runs that count as dead: they serve, but others come first.</param>
    public static void Find(IReadOnlyList<DemandNode> demands, SignalGraph graph, IReadOnlyList<MarkedPoint> marks)
    {
        var options = new List<RunOptions>();
        foreach (var demand in demands)
        {
            demand.Existing = PointIndex.None;
            var runs = demand.Line is not null ? LineRuns(demand, graph)
                : demand.Feed!.Source.IsNone ? []
                : FeedRuns(demand, graph);
            if (runs.Count > 0)
            {
                var all = new RunOptions(demand, runs, runs);
                var usable = marks.Count == 0 ? runs : runs.FindAll(run => !all.Points(run).Any(point => IsMarked(marks, point)));
                options.Add(usable.Count == runs.Count ? all : new RunOptions(demand, [.. usable, .. runs.Except(usable)], usable));
            }
        }

        new RunMatching(options).Match();
        foreach (var demand in demands)
        {
            demand.IsFactoryOnly = !demand.Existing.IsNone && IsFactoryOnly(demand, graph);
            demand.IsHeld = !demand.Existing.IsNone && !demand.IsFactoryOnly && Holds(demand);
        }
    }

    private static bool Holds(DemandNode demand) =>
        demand.Feed is { } feed
            ? feed.Model.Hold ?? (feed.Model.Role == FeedRole.Main || feed.Model.Role == FeedRole.InEar)
            : demand.Line!.Model.Hold ?? false;

    private static IReadOnlyList<PointIndex> AllRuns(DemandNode demand) =>
        demand.EvenRuns.Count == 0 ? demand.Allowed : [.. demand.Allowed.Concat(demand.EvenRuns).Order()];

    private static List<PointIndex> FeedRuns(DemandNode demand, SignalGraph graph)
    {
        var serving = new List<PointIndex>();
        foreach (var run in AllRuns(demand))
        {
            if (Carries(graph, run, demand.Feed!.Source, demand.Width))
            {
                serving.Add(run);
            }
        }

        return serving;
    }

    /// <summary>The inputs that sinks of the line trace to, those of most sinks first. A split line goes by the first of its points.</summary>
    private static List<PointIndex> LineRuns(DemandNode demand, SignalGraph graph)
    {
        var serving = new List<(PointIndex Run, int Deliveries)>();
        foreach (var run in AllRuns(demand))
        {
            var deliveries = 0;
            foreach (var sink in demand.Line!.Sinks)
            {
                deliveries += !sink.IsNone && Carries(graph, sink, run, demand.Width) ? 1 : 0;
            }

            if (deliveries > 0)
            {
                serving.Add((run, deliveries));
            }
        }

        return serving.Count > 0 && !demand.Line!.Model.From.At.IsEmpty
            ? [demand.Allowed[0]]
            : [.. serving.OrderByDescending(found => found.Deliveries).ThenBy(found => graph.NumberOf(found.Run)).ThenBy(found => found.Run).Select(found => found.Run)];
    }

    private static bool IsMarked(IReadOnlyList<MarkedPoint> marks, int point)
    {
        foreach (var mark in marks)
        {
            if (point >= mark.First.Value && point < mark.First.Value + mark.Width)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when each point of a run is fed, over any number of hops, by the source at the same position.</summary>
    internal static bool Carries(SignalGraph graph, PointIndex run, PointIndex source, int width)
    {
        for (var position = 0; position < width; position++)
        {
            if (!IsFedBy(graph, run.Value + position, source.Value + position))
            {
                return false;
            }
        }

        return true;
    }

    internal static bool IsFedBy(SignalGraph graph, int point, int source)
    {
        var upstream = graph.Upstreams;
        for (var steps = 0; point >= 0 && steps <= upstream.Length; steps++)
        {
            if (point == source)
            {
                return true;
            }

            point = upstream[point];
        }

        return false;
    }

    private static bool IsFactoryOnly(DemandNode demand, SignalGraph graph)
    {
        if (demand.Feed is { } feed)
        {
            return IsFactoryPath(graph, demand.Existing, feed.Source, demand.Width);
        }

        foreach (var sink in demand.Line!.Sinks)
        {
            foreach (var run in demand.Line.Model.From.At.IsEmpty ? [demand.Existing] : demand.Allowed)
            {
                if (!sink.IsNone && Carries(graph, sink, run, demand.Width) && !IsFactoryPath(graph, sink, run, demand.Width))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static bool IsFactoryPath(SignalGraph graph, PointIndex run, PointIndex source, int width)
    {
        for (var position = 0; position < width; position++)
        {
            for (var point = run.Value + position; point != source.Value + position; point = graph.Upstreams[point])
            {
                if (graph.Hops[point] is HopKind.Route or HopKind.Stream)
                {
                    return false;
                }
            }
        }

        return true;
    }
}
