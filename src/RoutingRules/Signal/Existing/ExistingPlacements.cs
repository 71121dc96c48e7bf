using System.Buffers;
using System.Runtime.InteropServices;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Signal.Existing;

/// <summary>Finds which allowed run serves each demand in the patch as it stands.</summary>
/// <remarks>
/// As many demands as possible are served by disjoint runs; points in order come before dead ones and those behind a cable; ties go to lines that
/// name their inputs, then to earlier demands, then to runs that the document does not give to another, then to those that a route of the patch serves,
/// then to earlier devices and lower numbers. A line is served at the input that most of its sinks trace to. Rules judge what arrives; for
/// assigning, nobody stands at all where another is named or where what must stay apart does not.
/// </remarks>
internal static class ExistingPlacements
{
    /// <summary>Sets what serves each demand.</summary>
    /// <param name="demands">The demands, in demand order.</param>
    /// <param name="graph">The graph.</param>
    /// <param name="marks">Runs that count as dead: they serve, but others come first.</param>
    public static void Find(IReadOnlyList<DemandNode> demands, SignalGraph graph, IReadOnlyList<MarkedPoint> marks) =>
        Find(demands, new ServingRuns(graph, demands, isStrict: false), graph, marks, null);

    /// <summary>A show whose demands stand nowhere that the document gives to another, and apart where they must; the same show when they do.</summary>
    /// <param name="show">The show.</param>
    /// <param name="excluded">Points to do without; they come last like dead ones.</param>
    public static ResolvedShow ForAssignment(ResolvedShow show, IReadOnlyList<MarkedPoint> excluded)
    {
        var apart = Apartness.Of(show);
        var serving = new ServingRuns(show.Graph, show.Demands, isStrict: true);
        var table = new MarkTable(show.Graph.PointCount, excluded);
        if (show.Demands.All(demand => demand.Existing.IsNone || MayStay(demand)))
        {
            return show;
        }

        bool MayStay(DemandNode demand) =>
            serving.MayStand(demand, demand.Existing) && !table.Touches(demand.Existing, demand.Width) && (apart is null || IsApart(show, apart, demand));

        var demands = show
            .Demands.Select(demand => new DemandNode
            {
                Key = demand.Key,
                Index = demand.Index,
                Feed = demand.Feed,
                Line = demand.Line,
                Entry = demand.Entry,
                Width = demand.Width,
                IsPinned = demand.IsPinned,
                Allowed = demand.Allowed,
                EvenRuns = demand.EvenRuns,
            })
            .ToArray();
        Find(demands, serving, show.Graph, [.. show.Marks, .. excluded], apart);
        return new ResolvedShow
        {
            Document = show.Document,
            Devices = show.Devices,
            Graph = show.Graph,
            Routes = show.Routes,
            Streams = show.Streams,
            Cables = show.Cables,
            Links = show.Links,
            Feeds = show.Feeds,
            Lines = show.Lines,
            Demands = demands,
            Conflicts = show.Conflicts,
            IdleRoutes = show.IdleRoutes,
            Network = show.Network,
            Marks = show.Marks,
        };
    }

    private static bool IsApart(ResolvedShow show, Apartness apart, DemandNode demand) =>
        apart
            .Of(demand.Index)
            .All(pair =>
                show.Demands[pair.Other].Existing is { IsNone: true }
                || apart.Holds(demand, demand.Existing, show.Demands[pair.Other], show.Demands[pair.Other].Existing)
            );

    private static void Find(IReadOnlyList<DemandNode> demands, ServingRuns serving, SignalGraph graph, IReadOnlyList<MarkedPoint> marks, Apartness? apart)
    {
        var owners = ArrayPool<int>.Shared.Rent(graph.PointCount);
        owners.AsSpan(0, graph.PointCount).Clear();
        Serve(demands, serving, new MarkTable(graph.PointCount, marks), owners, apart);
        ArrayPool<int>.Shared.Return(owners);
        foreach (var demand in demands)
        {
            demand.IsFactoryOnly = !demand.Existing.IsNone && IsFactoryOnly(demand, graph);
            demand.IsHeld = !demand.Existing.IsNone && !demand.IsFactoryOnly && Holds(demand);
        }
    }

    private static bool Holds(DemandNode demand) =>
        demand.Feed is { } feed ? feed.Model.Hold ?? (feed.Model.Role == FeedRole.Main || feed.Model.Role == FeedRole.InEar) : demand.Line!.Model.Hold ?? false;

    /// <summary>
    /// Gives each demand its first run where nobody else could use the same points, and leaves those that compete to the matching, each lot by itself.
    /// </summary>
    /// <param name="demands">The demands.</param>
    /// <param name="serving">Finds the runs.</param>
    /// <param name="marks">The points that count as dead.</param>
    /// <param name="owners">For each point 0; holds the first demand that could use it, by its position from 1.</param>
    /// <param name="apart">What must stay apart; null when that does not matter.</param>
    private static void Serve(IReadOnlyList<DemandNode> demands, ServingRuns serving, MarkTable marks, Span<int> owners, Apartness? apart)
    {
        var runs = new List<PointIndex>(demands.Count);
        var ends = new int[demands.Count];
        var lots = new DisjointSets(demands.Count);
        for (var i = 0; i < ends.Length; i++)
        {
            demands[i].Existing = PointIndex.None;
            foreach (var run in serving.Of(demands[i]))
            {
                runs.Add(run);
                foreach (var end in Ends(demands[i], run))
                {
                    Own(owners.Slice(end.Value, demands[i].Width), lots, i);
                }
            }

            ends[i] = runs.Count;
        }

        for (var i = 0; apart is not null && i < ends.Length; i++)
        {
            foreach (var (other, _) in HasRuns(i) ? apart.Of(i) : [])
            {
                if (HasRuns(other))
                {
                    lots.Join(i, other);
                }
            }
        }

        SortedDictionary<int, List<RunOptions>>? contested = null;
        for (var i = 0; i < ends.Length; i++)
        {
            var own = CollectionsMarshal.AsSpan(runs)[(i == 0 ? 0 : ends[i - 1])..ends[i]];
            if (own.Length > 0 && lots.SizeOf(i) > 1)
            {
                contested ??= [];
                if (!contested.TryGetValue(lots.Find(i), out var lot))
                {
                    contested.Add(lots.Find(i), lot = []);
                }

                lot.Add(Options(demands[i], own, serving, marks));
            }
            else if (own.Length > 0)
            {
                demands[i].Existing = FirstUsable(demands[i], own, serving, marks);
            }
        }

        foreach (var lot in contested?.Values ?? Enumerable.Empty<List<RunOptions>>())
        {
            // A line that names its input has it before one that may take any; for assigning, nobody competes with it.
            new RunMatching(apart is null ? [.. lot.OrderByDescending(options => options.Demand is { IsPinned: true, Line: not null })] : lot, apart).Match();
        }

        bool HasRuns(int demand) => ends[demand] > (demand == 0 ? 0 : ends[demand - 1]);
    }

    /// <summary>The runs a demand takes at a run: that one, and for a line that is split before the boxes every split end.</summary>
    private static ReadOnlySpan<PointIndex> Ends(DemandNode demand, in PointIndex run) =>
        demand.Line is null || demand.Line.Model.From.At.IsEmpty ? new ReadOnlySpan<PointIndex>(in run) : demand.Allowed.AsSpan();

    private static void Own(Span<int> owners, DisjointSets lots, int demand)
    {
        foreach (ref var owner in owners)
        {
            if (owner == 0)
            {
                owner = demand + 1;
            }
            else
            {
                lots.Join(owner - 1, demand);
            }
        }
    }

    private static bool IsUsable(DemandNode demand, in PointIndex run, ServingRuns serving, MarkTable marks)
    {
        if (serving.ComesByCable(demand, run))
        {
            return false;
        }

        foreach (var end in Ends(demand, run))
        {
            if (marks.Touches(end, demand.Width))
            {
                return false;
            }
        }

        return true;
    }

    private static PointIndex FirstUsable(DemandNode demand, ReadOnlySpan<PointIndex> runs, ServingRuns serving, MarkTable marks)
    {
        foreach (ref readonly var run in runs)
        {
            if (IsUsable(demand, run, serving, marks))
            {
                return run;
            }
        }

        return runs[0];
    }

    private static RunOptions Options(DemandNode demand, ReadOnlySpan<PointIndex> runs, ServingRuns serving, MarkTable marks)
    {
        var usable = new List<PointIndex>();
        var dead = new List<PointIndex>();
        foreach (ref readonly var run in runs)
        {
            (IsUsable(demand, run, serving, marks) ? usable : dead).Add(run);
        }

        return new RunOptions(demand, dead.Count == 0 ? usable : [.. usable, .. dead], usable);
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
        foreach (var passed in graph.Upward(new PointIndex(point)))
        {
            if (passed.Value == source)
            {
                return true;
            }
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
            var existing = demand.Existing;
            foreach (var run in Ends(demand, existing))
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
            foreach (var point in graph.Upward(run + position))
            {
                if (point == source + position)
                {
                    break;
                }

                if (graph.Via(point) is HopKind.Route or HopKind.Stream)
                {
                    return false;
                }
            }
        }

        return true;
    }
}
