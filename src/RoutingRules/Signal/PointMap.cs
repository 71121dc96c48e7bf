using RoutingRules.Model;

namespace RoutingRules.Signal;

/// <summary>Turns entries about runs of points into a table by point.</summary>
internal static class PointMap
{
    /// <summary>What is said about each point; of several entries that say something the first counts.</summary>
    /// <param name="entries">The entries, in document order.</param>
    /// <param name="at">The points an entry is about.</param>
    /// <param name="value">What it says about the point at a position of the run; null when it says nothing.</param>
    public static Dictionary<Point, TValue> First<T, TValue>(IEnumerable<T> entries, Func<T, PointRange> at, Func<T, TValue?> value)
        where TValue : struct
    {
        var map = new Dictionary<Point, TValue>();
        foreach (var entry in entries)
        {
            var run = at(entry);
            for (var i = 0; value(entry) is { } said && i < run.Width; i++)
            {
                map.TryAdd(run[i], said);
            }
        }

        return map;
    }
}
