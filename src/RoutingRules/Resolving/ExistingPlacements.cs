using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>Finds which allowed run serves each demand in the patch as it stands.</summary>
/// <remarks>
/// As many demands as possible are served by disjoint runs; points in order come before dead ones; ties go to earlier demands, then to earlier
/// devices and lower numbers. A line is served at the input that most of its sinks trace to.
/// </remarks>
internal static class ExistingPlacements
{
    public static void Find(DemandNode[] demands, SignalGraph graph, MarkedPoint[] marks)
    {
        var options = new List<(DemandNode Demand, List<PointIndex> Runs)>();
        foreach (var demand in demands)
        {
            if (demand.Line is not null)
            {
                FindLine(demand, graph);
            }
            else if (!demand.Feed!.Source.IsNone)
            {
                var runs = ServingRuns(demand, graph, marks);
                if (runs.Count > 0)
                {
                    options.Add((demand, runs));
                }
            }
        }

        Match(options);
        foreach (var demand in demands)
        {
            if (!demand.Existing.IsNone)
            {
                demand.IsFactoryOnly = IsFactoryOnly(demand, graph);
                demand.IsHeld = !demand.IsFactoryOnly && Holds(demand);
            }
        }
    }

    private static bool Holds(DemandNode demand) =>
        demand.Feed is { } feed
            ? feed.Model.Hold ?? (feed.Model.Role == FeedRole.Main || feed.Model.Role == FeedRole.InEar)
            : demand.Line!.Model.Hold ?? false;

    private static List<PointIndex> ServingRuns(DemandNode demand, SignalGraph graph, MarkedPoint[] marks)
    {
        var usable = new List<PointIndex>();
        var dead = new List<PointIndex>();
        var runs = demand.EvenRuns.Count == 0 ? demand.Allowed : [.. demand.Allowed.Concat(demand.EvenRuns).Order()];
        foreach (var run in runs)
        {
            if (Carries(graph, run, demand.Feed!.Source, demand.Width))
            {
                (IsMarked(marks, run, demand.Width) ? dead : usable).Add(run);
            }
        }

        usable.AddRange(dead);
        return usable;
    }

    private static bool IsMarked(MarkedPoint[] marks, PointIndex run, int width)
    {
        foreach (var mark in marks)
        {
            if (run.Value < mark.First.Value + mark.Width && mark.First.Value < run.Value + width)
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

    private static void FindLine(DemandNode demand, SignalGraph graph)
    {
        var line = demand.Line!;
        var best = 0;
        var runs = demand.EvenRuns.Count == 0 ? demand.Allowed : [.. demand.Allowed.Concat(demand.EvenRuns).Order()];
        foreach (var run in runs)
        {
            var deliveries = 0;
            foreach (var sink in line.Sinks)
            {
                deliveries += !sink.IsNone && Carries(graph, sink, run, demand.Width) ? 1 : 0;
            }

            if (deliveries > best)
            {
                best = deliveries;

                // A split line is one signal at all its points and goes by the first of them.
                demand.Existing = line.Model.From.At.IsEmpty ? run : demand.Allowed[0];
            }
        }
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

    /// <summary>Augmenting paths in demand order, free runs first; then a pass that gives earlier demands their earlier runs.</summary>
    private static void Match(List<(DemandNode Demand, List<PointIndex> Runs)> options)
    {
        var taken = new Dictionary<int, int>();
        for (var i = 0; i < options.Count; i++)
        {
            Augment(i, []);
        }

        for (var i = 0; i < options.Count; i++)
        {
            Improve(i);
        }

        void Improve(int index)
        {
            var (demand, runs) = options[index];
            for (var i = 0; i < runs.Count && !demand.Existing.IsNone && runs[i] != demand.Existing; i++)
            {
                var holders = Holders(runs[i].Value, demand.Width);
                var current = demand.Existing;
                if (holders.Count == 1 && holders[0] > index && options[holders[0]].Demand.Width == demand.Width && options[holders[0]].Runs.Contains(current))
                {
                    Release(holders[0]);
                    Release(index);
                    Take(index, runs[i]);
                    Take(holders[0], current);
                }
                else if (holders.Count == 0)
                {
                    Release(index);
                    Take(index, runs[i]);
                }
            }
        }

        bool Augment(int index, HashSet<int> visited)
        {
            var (demand, runs) = options[index];
            foreach (var run in runs)
            {
                if (!visited.Contains(run.Value) && Holders(run.Value, demand.Width).Count == 0)
                {
                    Take(index, run);
                    return true;
                }
            }

            foreach (var run in runs)
            {
                if (!visited.Add(run.Value))
                {
                    continue;
                }

                var holders = Holders(run.Value, demand.Width);
                if (holders.Count == 0 || (holders.Count == 1 && holders[0] != index && Move(holders[0], visited)))
                {
                    Take(index, run);
                    return true;
                }
            }

            return false;
        }

        bool Move(int holder, HashSet<int> visited)
        {
            var before = options[holder].Demand.Existing;
            Release(holder);
            if (Augment(holder, visited))
            {
                return true;
            }

            Take(holder, before);
            return false;
        }

        List<int> Holders(int run, int width)
        {
            var holders = new List<int>();
            for (var position = 0; position < width; position++)
            {
                if (taken.TryGetValue(run + position, out var holder) && !holders.Contains(holder))
                {
                    holders.Add(holder);
                }
            }

            return holders;
        }

        void Take(int index, PointIndex run)
        {
            var demand = options[index].Demand;
            demand.Existing = run;
            for (var position = 0; position < demand.Width; position++)
            {
                taken[run.Value + position] = index;
            }
        }

        void Release(int index)
        {
            var demand = options[index].Demand;
            for (var position = 0; position < demand.Width; position++)
            {
                taken.Remove(demand.Existing.Value + position);
            }

            demand.Existing = PointIndex.None;
        }
    }
}
