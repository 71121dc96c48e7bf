namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Runs of faults of feeds or lines that one cause explains.</summary>
internal static class FaultRuns
{
    /// <summary>Faults in order, each with the run before it where the causes of both can be joined.</summary>
    /// <param name="faults">The faults; they stay as they are.</param>
    /// <param name="causesOf">The causes of a fault.</param>
    /// <param name="compare">An order that does not depend on that of the document.</param>
    /// <param name="join">The joined causes of the first fault of a run, the causes of the run and a further fault; null when it belongs to another
    /// run.</param>
    public static List<(List<T> Faults, List<MissingCause> Causes)> Of<T>(
        List<T> faults,
        Func<T, List<MissingCause>> causesOf,
        Comparison<T> compare,
        Func<T, List<MissingCause>, T, List<MissingCause>?> join
    )
    {
        faults = [.. faults];
        faults.Sort(compare);
        var runs = new List<(List<T> Faults, List<MissingCause> Causes)>();
        foreach (var fault in faults)
        {
            if (runs.Count > 0 && join(runs[^1].Faults[0], runs[^1].Causes, fault) is { } joined)
            {
                runs[^1].Faults.Add(fault);
                runs[^1] = (runs[^1].Faults, joined);
            }
            else
            {
                runs.Add(([fault], causesOf(fault)));
            }
        }

        return runs;
    }

    /// <summary>Orders lists of causes: fewer first, then cause by cause.</summary>
    public static int Compare(List<MissingCause> x, List<MissingCause> y)
    {
        var order = x.Count.CompareTo(y.Count);
        for (var i = 0; order == 0 && i < x.Count; i++)
        {
            order = MissingCause.Compare(x[i], y[i]);
        }

        return order;
    }
}
