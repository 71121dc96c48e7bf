using RoutingRules.Resolving;

namespace RoutingRules.Signal.Existing;

/// <summary>Finds the allowed runs that serve a demand in the patch as it stands, by following the signal from where it is known.</summary>
internal sealed class ServingRuns
{
    private readonly SignalGraph graph;

    /// <summary>Points that the document itself gives to a demand: pins, and outputs that lines name.</summary>
    private PointSet? named;

    private readonly List<(PointIndex Run, int Deliveries)> delivering = [];
    private readonly List<PointIndex> serving = [];

    private readonly bool isStrict;

    /// <summary>Looks at what demands name.</summary>
    /// <param name="graph">The graph.</param>
    /// <param name="demands">The demands.</param>
    /// <param name="isStrict">True when nobody stands where another is named; else such runs come last.</param>
    public ServingRuns(SignalGraph graph, IReadOnlyList<DemandNode> demands, bool isStrict)
    {
        this.graph = graph;
        this.isStrict = isStrict;
        for (var i = 0; i < demands.Count; i++)
        {
            if (!demands[i].IsPinned && demands[i].Line is null)
            {
                continue;
            }

            foreach (var run in NamedRuns.Of(graph, demands[i]))
            {
                (named ??= new PointSet(graph.PointCount)).Add(run, demands[i].Width);
            }
        }
    }

    /// <summary>The runs that serve a demand, in the order ties are settled in. The list is used again at the next call.</summary>
    public List<PointIndex> Of(DemandNode demand)
    {
        serving.Clear();
        if (demand.Line is not null)
        {
            AddLine(demand);
        }
        else if (!demand.Feed!.Source.IsNone)
        {
            AddFeed(demand, demand.Feed.Source);
        }

        foreach (var run in serving)
        {
            if (!MayStand(demand, run))
            {
                PutNamedLast(demand);
                break;
            }
        }

        return serving;
    }

    /// <summary>True when a feed reaches a run by a cable: what lies behind another place cannot be its own, whatever is routed.</summary>
    public bool ComesByCable(DemandNode demand, PointIndex run)
    {
        for (var position = 0; demand.Feed is { Source.IsNone: false } feed && position < demand.Width; position++)
        {
            foreach (var point in graph.Upward(run + position))
            {
                if (point == feed.Source + position)
                {
                    break;
                }

                if (graph.Via(point) == HopKind.Cable)
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>False for a run that the document gives to another demand.</summary>
    public bool MayStand(DemandNode demand, PointIndex run) => demand.IsPinned || !IsNamed(run, demand.Width);

    private void PutNamedLast(DemandNode demand)
    {
        var others = serving.FindAll(run => !MayStand(demand, run));
        serving.RemoveAll(others.Contains);
        serving.AddRange(isStrict ? [] : others);
    }

    private bool IsNamed(PointIndex run, int width)
    {
        for (var position = 0; named is not null && position < width; position++)
        {
            if (named.Contains(run.Value + position))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Follows the source down: what it reaches is little, the places that would do may be many.</summary>
    private void AddFeed(DemandNode demand, PointIndex source)
    {
        foreach (var run in graph.Downward(source))
        {
            if (Allows(demand, run) && ExistingPlacements.Carries(graph, run, source, demand.Width))
            {
                serving.Add(run);
            }
        }

        if (serving.Count > 1)
        {
            serving.Sort();
            PutLeaksLast(demand, source);
        }
    }

    /// <summary>What somebody routed comes before what leaks there by factory routes; each in order of device and number.</summary>
    private void PutLeaksLast(DemandNode demand, PointIndex source)
    {
        var leaking = serving.FindAll(run => !IsRouted(run, source, demand.Width));
        serving.RemoveAll(leaking.Contains);
        serving.AddRange(leaking);
    }

    /// <summary>True when a route of the patch is on the way to each point of a run.</summary>
    private bool IsRouted(PointIndex run, PointIndex source, int width)
    {
        for (var position = 0; position < width; position++)
        {
            var isRouted = false;
            foreach (var point in graph.Upward(run + position))
            {
                if (point == source + position)
                {
                    break;
                }

                isRouted |= graph.Via(point) == HopKind.Route;
            }

            if (!isRouted)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Adds the inputs that sinks of the line trace to, those of most sinks first. A split line goes by the first of its points.</summary>
    private void AddLine(DemandNode demand)
    {
        delivering.Clear();
        var sinks = demand.Line!.Sinks;
        for (var i = 0; i < sinks.Count; i++)
        {
            if (!sinks[i].IsNone && !demand.Line.IsRepeated(i))
            {
                AddDeliveries(demand, sinks[i]);
            }
        }

        if (delivering.Count > 0 && !demand.Line.Model.From.At.IsEmpty)
        {
            serving.Add(demand.Allowed[0]);
            return;
        }

        if (delivering.Count > 1)
        {
            delivering.Sort(ByDeliveries);
        }

        foreach (var (run, _) in delivering)
        {
            serving.Add(run);
        }
    }

    private void AddDeliveries(DemandNode demand, PointIndex sink)
    {
        foreach (var point in graph.Upward(sink))
        {
            if (
                (demand.IsPinned ? IsPin(demand, point) : Allows(demand, point))
                && (demand.Width == 1 || ExistingPlacements.Carries(graph, sink, point, demand.Width))
            )
            {
                Count(point);
            }
        }
    }

    private void Count(PointIndex run)
    {
        for (var i = 0; i < delivering.Count; i++)
        {
            if (delivering[i].Run == run)
            {
                delivering[i] = (run, delivering[i].Deliveries + 1);
                return;
            }
        }

        delivering.Add((run, 1));
    }

    private int ByDeliveries((PointIndex Run, int Deliveries) x, (PointIndex Run, int Deliveries) y)
    {
        var order = y.Deliveries.CompareTo(x.Deliveries);
        order = order != 0 ? order : graph.NumberOf(x.Run).CompareTo(graph.NumberOf(y.Run));
        return order != 0 ? order : x.Run.CompareTo(y.Run);
    }

    // Pins of a split line stand in the order written, so that a search by halves would miss some.
    private static bool IsPin(DemandNode demand, PointIndex point)
    {
        foreach (var run in demand.Allowed)
        {
            if (run == point)
            {
                return true;
            }
        }

        return false;
    }

    private static bool Allows(DemandNode demand, PointIndex point) =>
        demand.Allowed.AsSpan().BinarySearch(point) >= 0 || demand.EvenRuns.AsSpan().BinarySearch(point) >= 0;
}
