using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Fixing;

/// <summary>Edits of routes, position by position.</summary>
internal static class RouteEdits
{
    /// <summary>Takes positions out of routes; a route that loses its middle becomes two.</summary>
    public static List<ShowEdit> TakeOut(FixContext context, Func<RouteNode, int, bool> drop)
    {
        var edits = new List<ShowEdit>();
        var routes = context.Resolved.Routes;
        for (var i = routes.Count - 1; i >= 0; i--)
        {
            var route = routes[i];
            if (route.State == ConnectionState.Connected && RunCuts.Kept(route.Model.To.Width, position => drop(route, position)) is { } kept)
            {
                ListEdits.Exchange(edits, ShowLists.Routes, i, route.Model, kept.ConvertAll(part => Part(route.Model, part.First, part.Width)));
            }
        }

        return edits;
    }

    /// <summary>Takes all routes at some sinks out.</summary>
    public static List<ShowEdit> TakeOut(FixContext context, PointIndex first, int width) =>
        TakeOut(context, (route, position) => route.To + position >= first && route.To + position < first + width);

    /// <summary>Gives sinks new sources: what routes say about them is taken out, and routes that say it stand at the end of the list.</summary>
    /// <param name="context">The show.</param>
    /// <param name="sources">The source of each sink; none clears the sink.</param>
    public static ValueList<ShowEdit> Set(FixContext context, SortedDictionary<PointIndex, PointIndex> sources)
    {
        var edits = TakeOut(context, (route, position) => sources.ContainsKey(route.To + position));
        var end =
            context.Resolved.Routes.Count
            + edits.Sum(edit =>
                edit.Kind == EditKind.Insert ? 1
                : edit.Kind == EditKind.Remove ? -1
                : 0
            );
        var graph = context.Resolved.Graph;
        var runs = new List<(PointIndex Sink, PointIndex Source, int Width)>();
        foreach (var (sink, source) in sources)
        {
            if (
                runs.Count > 0
                && runs[^1] is var (first, from, width)
                && first + width == sink
                && graph.GroupOf(first) == graph.GroupOf(sink)
                && graph.DeviceOf(first) == graph.DeviceOf(sink)
                && (source.IsNone ? from.IsNone : from + width == source && graph.GroupOf(from) == graph.GroupOf(source))
            )
            {
                runs[^1] = (first, from, width + 1);
            }
            else
            {
                runs.Add((sink, source, 1));
            }
        }

        foreach (var (sink, source, width) in runs)
        {
            var route = new Route { From = source.IsNone ? null : graph.Address(source, width), To = graph.Address(sink, width) };
            edits.Add(ShowEdit.Insert(ShowLists.Routes, end++, route));
        }

        return edits.ToValueList();
    }

    /// <summary>
    /// The point on the way to a sink at which its source is chosen freely: the sink itself, or what it takes over a fixed path, a stream or a cable; none when
    /// there is none.
    /// </summary>
    public static PointIndex Chooser(SignalGraph graph, PointIndex sink)
    {
        foreach (var point in graph.Upward(sink))
        {
            switch (graph.Via(point))
            {
                case HopKind.Fixed or HopKind.Stream or HopKind.Cable or HopKind.Carrier:
                    break;
                case HopKind.Through:
                    return PointIndex.None;
                default:
                    return graph.FixedSource(point) is null ? point : PointIndex.None;
            }
        }

        return PointIndex.None;
    }

    /// <summary>True when a source may be routed to a sink without regard to its neighbours.</summary>
    public static bool IsFree(SignalGraph graph, PointIndex source, PointIndex sink) =>
        source.IsNone ? graph.FixedSource(sink) is null : graph.RoutingBetween(source, sink)?.Mode == RoutingMode.Free;

    private static Route Part(Route route, int first, int width) =>
        route with
        {
            From = route.From is { } from ? RunCuts.Part(from, first, width) : null,
            To = RunCuts.Part(route.To, first, width),
        };
}
