using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>What plays the signal of a point: as far as it feeds one thing, and from there over each of several cables.</summary>
internal static class Players
{
    /// <summary>
    /// The last points, each with the place where its way parts from the others: the far end of a cable, or the point itself where nothing parts.
    /// </summary>
    /// <remarks>
    /// What parts inside a device where no cable leads on is played by that device. Where one does, each cable counts, and what the device itself plays;
    /// a connector with nothing in it does not.
    /// </remarks>
    public static List<(int Place, int End)> Of(ResolvedShow show, int point)
    {
        var found = new List<(int Place, int End)>();
        Collect(show, point, point, [], found);
        return found;
    }

    private static void Collect(ResolvedShow show, int point, int place, HashSet<int> passed, List<(int Place, int End)> found)
    {
        var graph = show.Graph;
        var fed = graph.Fed(new PointIndex(point));
        while (fed.Length == 1 && passed.Add(point))
        {
            point = fed[0];
            fed = graph.Fed(new PointIndex(point));
        }

        var ways = fed.Length > 1 && passed.Add(point) ? Parting(show, fed) : [];
        if (ways.Count == 0)
        {
            found.Add((place, point));
        }

        foreach (var way in ways)
        {
            Collect(show, way, ways.Count == 1 ? place : way, passed, found);
        }
    }

    /// <summary>The points behind a parting that play something; none where the parting is by routes, or no cable leads on.</summary>
    private static List<int> Parting(ResolvedShow show, ReadOnlySpan<int> fed)
    {
        var ways = new List<int>();
        var isCabled = false;
        foreach (var next in fed)
        {
            var at = new PointIndex(next);
            var leadsOn = show.Graph.Via(at) == HopKind.Cable || !show.Graph.Fed(at).IsEmpty;
            if (show.Graph.Via(at) is not (HopKind.Cable or HopKind.Through))
            {
                return [];
            }

            isCabled |= leadsOn;
            if (leadsOn || show.Ears.IsEnd(at) || show.Loudspeakers.IsEnd(at))
            {
                ways.Add(next);
            }
        }

        return isCabled ? ways : [];
    }
}
