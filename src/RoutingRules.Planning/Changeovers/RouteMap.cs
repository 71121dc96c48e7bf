using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Signal;

namespace RoutingRules.Planning.Changeovers;

/// <summary>The routes of a show point by point.</summary>
internal static class RouteMap
{
    /// <summary>
    /// The source that each routed sink is told to take; null where it is cleared. Of several claims the first counts; routes of unequal width claim nothing.
    /// </summary>
    public static Dictionary<Point, Point?> Of(Show show)
    {
        var map = new Dictionary<Point, Point?>();
        foreach (var route in show.Patch.Routes.Where(IsWhole))
        {
            for (var i = 0; i < route.To.Width; i++)
            {
                map.TryAdd(route.To[i], route.From is { } from ? from[i] : null);
            }
        }

        return map;
    }

    /// <summary>The show with one route for each point.</summary>
    public static Show Spread(Show show)
    {
        var routes = show.Patch.Routes.Where(route => !IsWhole(route)).Concat(Of(show).Select(pair => Route(pair.Key, pair.Value)));
        return show with { Patch = show.Patch with { Routes = routes.ToValueList() } };
    }

    /// <summary>A spread show in which a point is told to take a source.</summary>
    /// <param name="show">The show.</param>
    /// <param name="sink">The point.</param>
    /// <param name="isRouted">False to say nothing, so that what the device does by itself counts.</param>
    /// <param name="source">The source; null to clear.</param>
    public static Show With(Show show, Point sink, bool isRouted, Point? source)
    {
        var routes = show.Patch.Routes.Where(route => !IsWhole(route) || route.To[0] != sink).ToList();
        if (isRouted)
        {
            routes.Add(Route(sink, source));
        }

        return show with
        {
            Patch = show.Patch with { Routes = routes.ToValueList() },
        };
    }

    /// <summary>Points in groups that one route can serve: sinks follow one another, and so do sources, or all are cleared.</summary>
    public static List<List<(Point Sink, Point? Source)>> Chains(IEnumerable<(Point Sink, Point? Source)> routed) =>
        Runs.Chains(
            routed,
            static (x, y) => Runs.Follow(x.Sink, y.Sink) && (x.Source is { } source ? y.Source is { } next && Runs.Follow(source, next) : y.Source is null)
        );

    /// <summary>The route of a group that <see cref="Chains"/> made.</summary>
    public static Route Join(List<(Point Sink, Point? Source)> chain) =>
        new()
        {
            From = chain[0].Source is null ? null : Runs.Of(chain.Select(entry => entry.Source!.Value))[0],
            To = Runs.Of(chain.Select(entry => entry.Sink))[0],
        };

    /// <summary>What a sink takes inside its device: a point, none for silence.</summary>
    public static Point? Effective(SignalGraph graph, Dictionary<Point, Point?> routes, Point sink)
    {
        var index = graph.Find(sink);
        if (index.IsNone)
        {
            return null;
        }

        var isRouted = routes.TryGetValue(sink, out var routed);
        if (graph.FixedSource(index) is { } own)
        {
            return isRouted && routed is null && graph.IsClearable(index) ? null : Address(graph, own);
        }

        return isRouted ? routed : Address(graph, graph.FactorySource(index));
    }

    private static Point? Address(SignalGraph graph, PointIndex point) => point.IsNone ? null : graph.Address(point);

    /// <summary>True for a route that connects or clears; one of unequal width does neither.</summary>
    public static bool IsWhole(Route route) => route.From is not { } from || from.Width == route.To.Width;

    private static Route Route(Point sink, Point? source) => new() { From = source is { } from ? Runs.One(from) : null, To = Runs.One(sink) };
}
