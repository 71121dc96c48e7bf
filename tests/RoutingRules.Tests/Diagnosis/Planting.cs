using RoutingRules.Model;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>What the makers of faults share.</summary>
internal static class Planting
{
    public static Show Routes(Show show, IEnumerable<Route> routes) => show with { Patch = show.Patch with { Routes = routes.ToValueList() } };

    public static Show Streams(Show show, IEnumerable<AudioStream> streams) => show with { Patch = show.Patch with { Streams = streams.ToValueList() } };

    public static Show Cables(Show show, IEnumerable<Cable> cables) => show with { Rig = show.Rig with { Cables = cables.ToValueList() } };

    public static PointRange Part(PointRange run, int first, int width) => new(run.Device, run.Group, run.First + first, run.First + first + width - 1);

    /// <summary>Part of a route; nothing when it has no width.</summary>
    public static IEnumerable<Route> Part(Route route, int first, int width) =>
        width <= 0 ? [] : [route with { From = route.From is { } from ? Part(from, first, width) : null, To = Part(route.To, first, width) }];

    /// <summary>The routes point by point.</summary>
    public static List<Route> Points(Show show) =>
        show.Patch.Routes.SelectMany(route => Enumerable.Range(0, route.To.Width).SelectMany(i => Part(route, i, 1))).ToList();

    /// <summary>Points that stand in the order of the routes of a show, put together to runs again, with the clearings of the show.</summary>
    public static IEnumerable<Route> Joined(IEnumerable<Route> points, Show show)
    {
        var runs = new List<Route>();
        foreach (var point in points)
        {
            if (runs.Count > 0 && runs[^1] is { From: { } from } last && point.From is { } next && Follows(from, next) && Follows(last.To, point.To))
            {
                runs[^1] = last with
                {
                    From = new PointRange(from.Device, from.Group, from.First, next.Last),
                    To = new PointRange(last.To.Device, last.To.Group, last.To.First, point.To.Last),
                };
            }
            else
            {
                runs.Add(point);
            }
        }

        return [.. runs, .. show.Patch.Routes.Where(route => route.From is null)];
    }

    private static bool Follows(PointRange run, PointRange point) => run.Device == point.Device && run.Group == point.Group && run.Last + 1 == point.First;
}
