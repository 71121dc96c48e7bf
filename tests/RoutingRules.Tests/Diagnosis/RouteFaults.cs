using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>Slips at routes.</summary>
internal static class RouteFaults
{
    public static IEnumerable<Fault> All { get; } =
    [
        new("route: a point is gone", static (show, lot) => AtPoint(show, lot, static (_, _) => [])),
        new("route: a whole run is gone", static (show, lot) => AtRoute(show, lot, static (_, _) => [])),
        new("route: a point is cleared", static (show, lot) => AtPoint(show, lot, static (point, _) => [point with { From = null }])),
        new(
            "route: a point takes another source",
            static (show, lot) => AtPoint(show, lot, (point, lot) => [point with { From = Other(show, point.From!.Value, lot) }])
        ),
        new("route: two points are exchanged", static (show, lot) => ExchangePoints(show, lot)),
        new("route: neighbours are exchanged", static (show, lot) => ExchangeNeighbours(show, lot)),
        new("route: two runs are exchanged", static (show, lot) => ExchangeRuns(show, lot)),
        new(
            "route: a run arrives some points off",
            static (show, lot) => AtRoute(show, lot, static (route, lot) => [route with { To = Moved(route.To, lot) }], 2)
        ),
        new(
            "route: a run starts some points off",
            static (show, lot) => AtRoute(show, lot, static (route, lot) => [route with { From = Moved(route.From!.Value, lot) }], 2)
        ),
        new(
            "route: a run is too narrow at one end",
            static (show, lot) => AtRoute(show, lot, static (route, _) => [route with { To = Planting.Part(route.To, 0, route.To.Width - 1) }], 2)
        ),
        new("route: another claims the point first", static (show, lot) => Claim(show, lot)),
        new("route: one too many", static (show, lot) => Extra(show, lot)),
        new("route: a name is mistyped", static (show, lot) => AtRoute(show, lot, static (route, _) => [route with { From = Typo(route.From!.Value) }])),
    ];

    private static List<int> Used(Show show, int width) =>
        Enumerable.Range(0, show.Patch.Routes.Count).Where(i => show.Patch.Routes[i].From is not null && show.Patch.Routes[i].To.Width >= width).ToList();

    private static Show? AtRoute(Show show, Lot lot, Func<Route, Lot, IEnumerable<Route>> change, int width = 1)
    {
        var used = Used(show, width);
        if (used.Count == 0)
        {
            return null;
        }

        var index = lot.Pick(used);
        return Planting.Routes(show, [.. show.Patch.Routes.Take(index), .. change(show.Patch.Routes[index], lot), .. show.Patch.Routes.Skip(index + 1)]);
    }

    private static Show? AtPoint(Show show, Lot lot, Func<Route, Lot, IEnumerable<Route>> change) =>
        AtRoute(
            show,
            lot,
            (route, lot) =>
            {
                var at = lot.Roll(0, route.To.Width - 1);
                return
                [
                    .. Planting.Part(route, 0, at),
                    .. change(Planting.Part(route, at, 1).Single(), lot),
                    .. Planting.Part(route, at + 1, route.To.Width - at - 1),
                ];
            }
        );

    private static PointRange Other(Show show, PointRange from, Lot lot)
    {
        var graph = CleanShows.Engine.Resolve(show).Graph;
        var count = graph.Device(from.Device)!.Group(from.Group)!.Count;
        var number = lot.Roll(1, count);
        return new PointRange(from.Device, from.Group, number, number);
    }

    private static PointRange Moved(PointRange run, Lot lot)
    {
        var distance = lot.Pick([1, 2, 4, 8, -1, -2]);
        var first = run.First + distance < 1 ? run.First + Math.Abs(distance) : run.First + distance;
        return new PointRange(run.Device, run.Group, first, first + run.Width - 1);
    }

    private static PointRange Typo(PointRange from) => new(new Id<Device>(from.Device.Value + "x"), from.Group, from.First, from.Last);

    private static Show? ExchangePoints(Show show, Lot lot)
    {
        var points = Planting.Points(show).FindAll(point => point.From is not null);
        if (points.Count < 2)
        {
            return null;
        }

        var one = lot.Pick(points);
        var others = points.FindAll(point =>
            point.To.Device == one.To.Device && point.To.Group == one.To.Group && point.From!.Value.Group == one.From!.Value.Group && point != one
        );
        if (others.Count == 0)
        {
            return null;
        }

        var other = lot.Pick(others);
        return Planting.Routes(
            show,
            Planting.Joined(
                points.Select(point =>
                    point == one ? one with { From = other.From }
                    : point == other ? other with { From = one.From }
                    : point
                ),
                show
            )
        );
    }

    private static Show? ExchangeNeighbours(Show show, Lot lot) =>
        AtRoute(
            show,
            lot,
            (route, lot) =>
            {
                var at = lot.Roll(0, route.To.Width - 2);
                var (one, other) = (Planting.Part(route, at, 1).Single(), Planting.Part(route, at + 1, 1).Single());
                return
                [
                    .. Planting.Part(route, 0, at),
                    one with
                    {
                        From = other.From,
                    },
                    other with
                    {
                        From = one.From,
                    },
                    .. Planting.Part(route, at + 2, route.To.Width - at - 2),
                ];
            },
            2
        );

    private static Show? ExchangeRuns(Show show, Lot lot)
    {
        var used = Used(show, 1);
        if (used.Count < 2)
        {
            return null;
        }

        var routes = show.Patch.Routes;
        var one = lot.Pick(used);
        var others = used.FindAll(i =>
            i != one && routes[i].To.Width == routes[one].To.Width && routes[i].To.Device == routes[one].To.Device && routes[i].To.Group == routes[one].To.Group
        );
        if (others.Count == 0)
        {
            return null;
        }

        var other = lot.Pick(others);
        return Planting.Routes(
            show,
            routes.Select(
                (route, i) =>
                    i == one ? route with { From = routes[other].From }
                    : i == other ? route with { From = routes[one].From }
                    : route
            )
        );
    }

    private static Show? Claim(Show show, Lot lot)
    {
        var used = Used(show, 1);
        if (used.Count == 0)
        {
            return null;
        }

        var route = show.Patch.Routes[lot.Pick(used)];
        var point = Planting.Part(route, lot.Roll(0, route.To.Width - 1), 1).Single();
        return Planting.Routes(show, [point with { From = Other(show, point.From!.Value, lot) }, .. show.Patch.Routes]);
    }

    private static Show? Extra(Show show, Lot lot)
    {
        var used = Used(show, 1);
        if (used.Count == 0)
        {
            return null;
        }

        var route = show.Patch.Routes[lot.Pick(used)];
        var graph = CleanShows.Engine.Resolve(show).Graph;
        var count = graph.Device(route.To.Device)!.Group(route.To.Group)!.Count;
        var number = lot.Roll(1, count);
        var to = new PointRange(route.To.Device, route.To.Group, number, number);
        return graph.Find(to, out var at) == ConnectionState.Connected && graph.Via(at) is HopKind.None or HopKind.Factory
            ? Planting.Routes(show, [.. show.Patch.Routes, new Route { From = Planting.Part(route.From!.Value, 0, 1), To = to }])
            : null;
    }
}
