using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.ChannelMaps;

/// <summary>Edits of routes that make sinks of one device take something else.</summary>
internal static class RouteChanges
{
    /// <param name="show">The show.</param>
    /// <param name="device">The device.</param>
    /// <param name="wanted">What each sink that changes shall take; none for silence.</param>
    public static List<ShowEdit> Of(ResolvedShow show, DeviceNode device, SortedDictionary<PointIndex, PointIndex> wanted)
    {
        var edits = new List<ShowEdit>();
        var routes = show.Document.Patch.Routes;
        var count = routes.Count;
        for (var i = routes.Count - 1; i >= 0; i--)
        {
            count += Cut(edits, show.Graph, i, routes[i], wanted);
        }

        foreach (var route in Routes(show.Graph, wanted))
        {
            edits.Add(ShowEdit.Insert(ShowLists.Routes, count++, route));
        }

        return edits;
    }

    /// <summary>Takes sinks out of a route; gives by how many routes the list grows.</summary>
    private static int Cut(List<ShowEdit> edits, SignalGraph graph, int index, Route route, SortedDictionary<PointIndex, PointIndex> wanted)
    {
        if (graph.Find(route.To, out var first) != ConnectionState.Connected || (route.From is { } from && from.Width != route.To.Width))
        {
            return 0;
        }

        var kept = new List<(int First, int Last)>();
        for (var position = 0; position < route.To.Width; position++)
        {
            if (wanted.ContainsKey(first + position))
            {
                continue;
            }

            if (kept.Count > 0 && kept[^1].Last == position - 1)
            {
                kept[^1] = (kept[^1].First, position);
            }
            else
            {
                kept.Add((position, position));
            }
        }

        if (kept.Count == 1 && kept[0] == (0, route.To.Width - 1))
        {
            return 0;
        }

        if (kept.Count == 0)
        {
            edits.Add(ShowEdit.Remove(ShowLists.Routes, index, route));
            return -1;
        }

        edits.Add(ShowEdit.Replace(ShowLists.Routes, index, route, Part(route, kept[0])));
        for (var i = 1; i < kept.Count; i++)
        {
            edits.Add(ShowEdit.Insert(ShowLists.Routes, index + i, Part(route, kept[i]) with { Extensions = null }));
        }

        return kept.Count - 1;
    }

    private static Route Part(Route route, (int First, int Last) part) =>
        route with
        {
            From = route.From is { } from ? Part(from, part) : null,
            To = Part(route.To, part),
        };

    private static PointRange Part(PointRange range, (int First, int Last) part) =>
        new(range.Device, range.Group, range.First + part.First, range.First + part.Last);

    /// <summary>New routes, as few as can be, for the sinks whose factory source is not what they shall take.</summary>
    private static IEnumerable<Route> Routes(SignalGraph graph, SortedDictionary<PointIndex, PointIndex> wanted)
    {
        var run = new List<(PointIndex Sink, PointIndex Source)>();
        foreach (var (sink, source) in wanted)
        {
            if (graph.FactorySource(sink) == source)
            {
                continue;
            }

            if (run.Count > 0 && !Continues(graph, run[^1], (sink, source)))
            {
                yield return Route(graph, run);
                run.Clear();
            }

            run.Add((sink, source));
        }

        if (run.Count > 0)
        {
            yield return Route(graph, run);
        }
    }

    private static bool Continues(SignalGraph graph, (PointIndex Sink, PointIndex Source) last, (PointIndex Sink, PointIndex Source) next) =>
        next.Sink == last.Sink + 1
        && graph.GroupOf(next.Sink) == graph.GroupOf(last.Sink)
        && (
            next.Source.IsNone
                ? last.Source.IsNone
                : !last.Source.IsNone && next.Source == last.Source + 1 && graph.GroupOf(next.Source) == graph.GroupOf(last.Source)
        );

    private static Route Route(SignalGraph graph, List<(PointIndex Sink, PointIndex Source)> run) =>
        new() { From = run[0].Source.IsNone ? null : graph.Address(run[0].Source, run.Count), To = graph.Address(run[0].Sink, run.Count) };
}
