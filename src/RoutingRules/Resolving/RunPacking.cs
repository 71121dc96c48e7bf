namespace RoutingRules.Resolving;

/// <summary>The exact answer where pairs and single runs compete and the demands are few: every way is tried.</summary>
internal sealed class RunPacking(List<(DemandNode Demand, List<PointIndex> Usable, List<PointIndex> Dead)> options)
{
    private const int MaxSteps = 100_000;

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
        if (++steps > MaxSteps || value.Count + options.Count - index < bestValue.Count)
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

        var (demand, usable, dead) = options[index];
        foreach (var run in usable)
        {
            With(run, value.Usable + 1);
        }

        foreach (var run in dead)
        {
            With(run, value.Usable);
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
