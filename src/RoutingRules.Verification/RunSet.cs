using System.Collections;
using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>Runs of points in order, found by their first point.</summary>
internal sealed class RunSet : IReadOnlyList<PointRange>
{
    /// <summary>No run.</summary>
    public static readonly RunSet Empty = new([]);

    private readonly List<PointRange> runs;
    private readonly Dictionary<Point, PointRange> byFirst = [];

    public RunSet(List<PointRange> runs)
    {
        this.runs = runs;
        foreach (var run in runs)
            byFirst.TryAdd(run[0], run);
    }

    public int Count => runs.Count;

    public PointRange this[int index] => runs[index];

    /// <summary>The run that starts at a point; null when none does.</summary>
    public PointRange? At(Point first) => byFirst.TryGetValue(first, out var run) ? run : null;

    public bool Contains(PointRange run) => run.Width > 0 && At(run[0]) == run;

    public IEnumerator<PointRange> GetEnumerator() => runs.GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
