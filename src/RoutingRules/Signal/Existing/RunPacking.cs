using RoutingRules.Resolving;

namespace RoutingRules.Signal.Existing;

/// <summary>The exact answer where few demands compete: every way that could be better is tried.</summary>
/// <remarks>
/// Most served demands wins, then most usable runs, then the way that serves the earlier demands, then the first in order of runs.
/// Linear where nobody competes.
/// </remarks>
internal sealed class RunPacking(List<RunOptions> options, Apartness? apart)
{
    private const int MaxSteps = 20_000;

    /// <summary>Each demand is a step further down the stack.</summary>
    private const int MaxDemands = 2_000;

    private readonly PointIndex[] current = new PointIndex[options.Count];
    private readonly HashSet<int> taken = [];
    private PointIndex[]? best;
    private (int Count, int Usable) bestValue = (-1, -1);
    private int steps;

    /// <summary>Sets what serves each demand; false when there are too many ways, and nothing is set.</summary>
    public bool TryPack()
    {
        if (options.Count > MaxDemands)
        {
            return false;
        }

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
        var compared = (value.Count + left, value.Usable + left).CompareTo(bestValue);
        if (++steps > MaxSteps || compared < 0 || (compared == 0 && !MayServeEarlier(index)))
        {
            return;
        }

        if (index == options.Count)
        {
            if (value.CompareTo(bestValue) > 0 || (value == bestValue && ServesEarlier(index)))
            {
                bestValue = value;
                best = [.. current];
            }

            return;
        }

        var (_, all, usable) = options[index];
        foreach (var run in all)
        {
            With(run, value.Usable + (all.Count == usable.Count || usable.Contains(run) ? 1 : 0));
        }

        current[index] = PointIndex.None;
        Try(index + 1, value);

        void With(PointIndex run, int usableCount)
        {
            foreach (var point in options[index].Points(run))
            {
                if (taken.Contains(point))
                {
                    return;
                }
            }

            for (var other = 0; apart is not null && other < index; other++)
            {
                if (!current[other].IsNone && !apart.Holds(options[index].Demand, run, options[other].Demand, current[other]))
                {
                    return;
                }
            }

            current[index] = run;
            taken.UnionWith(options[index].Points(run));

            Try(index + 1, (value.Count + 1, usableCount));
            taken.ExceptWith(options[index].Points(run));
        }
    }

    /// <summary>True when the first demand of some that only one of the two ways serves is served by the current one.</summary>
    private bool ServesEarlier(int until)
    {
        for (var i = 0; i < until; i++)
        {
            if (best is not null && current[i].IsNone != best[i].IsNone)
            {
                return best[i].IsNone;
            }
        }

        return false;
    }

    private bool MayServeEarlier(int until) => ServesEarlier(until) || (SameServed(until) && Array.FindIndex(best!, until, run => run.IsNone) >= 0);

    private bool SameServed(int until)
    {
        for (var i = 0; i < until; i++)
        {
            if (current[i].IsNone != best![i].IsNone)
            {
                return false;
            }
        }

        return true;
    }
}
