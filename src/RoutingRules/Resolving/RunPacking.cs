namespace RoutingRules.Resolving;

/// <summary>The exact answer where few demands compete: every way that could be better is tried.</summary>
/// <remarks>Most served demands wins, then most usable runs; of equal ways the first in order of demands and runs. Linear where nobody competes.</remarks>
internal sealed class RunPacking(List<RunOptions> options)
{
    private const int MaxSteps = 20_000;

    private readonly PointIndex[] current = new PointIndex[options.Count];
    private readonly HashSet<int> taken = [];
    private PointIndex[]? best;
    private (int Count, int Usable) bestValue = (-1, -1);
    private int steps;

    /// <summary>Sets what serves each demand; false when there are too many ways, and nothing is set.</summary>
    public bool TryPack()
    {
        Try(0, (0, 0));
        if (steps > MaxSteps)
        {
            return false;
        }

        for (var i = 0; i < options.Count; i++)
        {
            options[i].Demand.Existing = best![i];
        }

        return true;
    }

    /// <summary>Goes through the ways in the order ties are settled in, so that the first of equals stays.</summary>
    private void Try(int index, (int Count, int Usable) value)
    {
        var left = options.Count - index;
        if (++steps > MaxSteps || (value.Count + left, value.Usable + left).CompareTo(bestValue) <= 0)
        {
            return;
        }

        if (index == options.Count)
        {
            if (value.CompareTo(bestValue) > 0)
            {
                bestValue = value;
                best = [.. current];
            }

            return;
        }

        var (demand, all, usable) = options[index];
        foreach (var run in all)
        {
            With(run, value.Usable + (all.Count == usable.Count || usable.Contains(run) ? 1 : 0));
        }

        current[index] = PointIndex.None;
        Try(index + 1, value);

        void With(PointIndex run, int usableCount)
        {
            for (var position = 0; position < demand.Width; position++)
            {
                if (taken.Contains(run.Value + position))
                {
                    return;
                }
            }

            current[index] = run;
            for (var position = 0; position < demand.Width; position++)
            {
                taken.Add(run.Value + position);
            }

            Try(index + 1, (value.Count + 1, usableCount));
            for (var position = 0; position < demand.Width; position++)
            {
                taken.Remove(run.Value + position);
            }
        }
    }
}
