using RoutingRules.Model;

namespace RoutingRules.Planning.LineChecks;

/// <summary>Where plugs are found that should be elsewhere.</summary>
internal sealed class PlugMap
{
    private readonly Dictionary<Point, Point> found = [];

    /// <summary>Points at which something is found that does not itself stay there, in the order they were named.</summary>
    public IEnumerable<Point> Entered => found.Values.Where(point => !found.ContainsKey(point));

    public bool IsEmpty => found.Count == 0;

    /// <summary>Adds plugs of a run that are at another run of the same width, and for a swap those of the other run here.</summary>
    /// <returns>What was said otherwise before; null when nothing was.</returns>
    public string? Add(PointRange at, PointRange other, bool isSwap)
    {
        for (var i = 0; i < at.Width; i++)
        {
            if ((Add(at[i], other[i]) ?? (isSwap ? Add(other[i], at[i]) : null)) is { } problem)
            {
                return problem;
            }
        }

        return null;
    }

    private string? Add(Point at, Point other)
    {
        if (found.TryGetValue(at, out var before))
        {
            return before == other ? null : $"what belongs at {at} was found at {before} already, and cannot be at {other} as well; keep one of the two.";
        }

        foreach (var (from, to) in found)
        {
            if (to == other)
            {
                return $"what belongs at {from} was found at {other} already, so what belongs at {at} cannot be there too; look once more.";
            }
        }

        found.Add(at, other);
        return null;
    }

    public bool Touches(PointRange run) => Enumerable.Range(0, run.Width).Any(i => found.ContainsKey(run[i]));

    /// <summary>The runs in which a run is found, each with the position at which it begins; one of all positions when nothing is elsewhere.</summary>
    public List<(int From, PointRange At)> Find(PointRange run)
    {
        var pieces = new List<(int From, PointRange At)>();
        for (var i = 0; i < run.Width; i++)
        {
            var at = found.GetValueOrDefault(run[i], run[i]);
            if (pieces.Count > 0 && pieces[^1] is var (from, last) && last.Device == at.Device && last.Group == at.Group && last.Last + 1 == at.Number)
            {
                pieces[^1] = (from, new PointRange(at.Device, at.Group, last.First, at.Number));
            }
            else
            {
                pieces.Add((i, new PointRange(at.Device, at.Group, at.Number, at.Number)));
            }
        }

        return pieces;
    }

    /// <summary>The one run in which a run is found; null when its points are no longer side by side in their order.</summary>
    public PointRange? FindWhole(PointRange run) => Find(run) is [var (_, whole)] ? whole : null;
}
