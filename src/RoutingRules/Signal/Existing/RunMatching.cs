using RoutingRules.Resolving;

namespace RoutingRules.Signal.Existing;

/// <summary>Gives as many demands as possible a run of their own; usable runs before dead ones, earlier demands and earlier runs first.</summary>
internal sealed class RunMatching(List<RunOptions> options, Apartness? apart)
{
    private readonly Dictionary<int, int> taken = [];
    private bool mayUseDead;

    public void Match()
    {
        if (new RunPacking(options, apart).TryPack())
        {
            return;
        }

        for (var round = 0; round < 2; round++)
        {
            mayUseDead = round == 1;
            for (var i = 0; i < options.Count; i++)
            {
                if (options[i].Demand.Existing.IsNone)
                {
                    Augment(i, []);
                }
            }
        }

        for (var i = 0; i < options.Count; i++)
        {
            Improve(i);
        }

        for (var i = 0; apart is not null && i < options.Count; i++)
        {
            KeepApart(i);
        }
    }

    /// <summary>Of what must stay apart and does not the later demand is served nowhere.</summary>
    private void KeepApart(int index)
    {
        var demand = options[index].Demand;
        for (var other = 0; !demand.Existing.IsNone && other < index; other++)
        {
            if (options[other].Demand.Existing is { IsNone: false } at && !apart!.Holds(demand, demand.Existing, options[other].Demand, at))
            {
                Release(index);
            }
        }
    }

    private IEnumerable<PointIndex> Runs(int index) => mayUseDead ? options[index].All : options[index].Usable;

    private bool Augment(int index, HashSet<int> visited)
    {
        var demand = options[index].Demand;
        foreach (var run in Runs(index))
        {
            if (!visited.Contains(run.Value) && Holders(index, run).Count == 0)
            {
                Take(index, run);
                return true;
            }
        }

        foreach (var run in Runs(index))
        {
            if (!visited.Add(run.Value))
            {
                continue;
            }

            var holders = Holders(index, run);
            if (holders.Count == 1 && Displace(holders[0], index, run, visited))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Takes a run from its holder if the holder finds another.</summary>
    private bool Displace(int holder, int index, PointIndex run, HashSet<int> visited)
    {
        var before = options[holder].Demand.Existing;
        Release(holder);
        Take(index, run);
        if (Augment(holder, visited))
        {
            return true;
        }

        Release(index);
        Take(holder, before);
        return false;
    }

    /// <summary>Lets a demand have an earlier run that is free, or that a later demand can give up for the one it has.</summary>
    private void Improve(int index)
    {
        var (demand, _, usable) = options[index];
        foreach (var run in usable)
        {
            if (demand.Existing.IsNone || run == demand.Existing)
            {
                return;
            }

            var holders = Holders(index, run);
            var current = demand.Existing;
            if (holders.Count == 0)
            {
                Release(index);
                Take(index, run);
                return;
            }

            if (holders.Count == 1 && holders[0] > index && options[holders[0]].Demand.Width == demand.Width && options[holders[0]].Usable.Contains(current))
            {
                Release(holders[0]);
                Release(index);
                Take(index, run);
                Take(holders[0], current);
                return;
            }
        }
    }

    private List<int> Holders(int index, PointIndex run)
    {
        var holders = new List<int>();
        foreach (var point in options[index].Points(run))
        {
            if (taken.TryGetValue(point, out var holder) && !holders.Contains(holder))
            {
                holders.Add(holder);
            }
        }

        return holders;
    }

    private void Take(int index, PointIndex run)
    {
        var demand = options[index].Demand;
        demand.Existing = run;
        foreach (var point in options[index].Points(run))
        {
            taken[point] = index;
        }
    }

    private void Release(int index)
    {
        var demand = options[index].Demand;
        foreach (var point in options[index].Points(demand.Existing))
        {
            taken.Remove(point);
        }

        demand.Existing = PointIndex.None;
    }
}
