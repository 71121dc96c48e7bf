using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>Gives each of many takers a point of its own as long as that is possible, by augmenting paths.</summary>
internal sealed class PointMatching
{
    private readonly List<Point[]> wanted = [];
    private readonly Dictionary<Point, int> takerOf = [];

    /// <summary>Adds a taker.</summary>
    /// <param name="points">The points it could take.</param>
    /// <returns>True when all takers that had a point, and this one, can have one each.</returns>
    public bool Add(IEnumerable<Point> points)
    {
        wanted.Add([.. points.Distinct()]);
        return Place(wanted.Count - 1, []);
    }

    private bool Place(int taker, HashSet<Point> tried)
    {
        foreach (var point in wanted[taker])
        {
            if (tried.Add(point) && (!takerOf.TryGetValue(point, out var other) || Place(other, tried)))
            {
                takerOf[point] = taker;
                return true;
            }
        }

        return false;
    }
}
