using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>What tasks need of links at least, however they are wired.</summary>
internal sealed class LinkFloor(AssignmentProblem problem, WiringTables tables, WiringSinks sinks)
{
    private WiringFloor? floor;

    /// <summary>False when what has to pass a link does not fit on it however closely it is packed.</summary>
    public bool MayCross(WiringTask[] part)
    {
        var passing = new SortedDictionary<(int At, int Sender), List<WiringTask>>();
        foreach (var task in part)
        {
            foreach (
                var at in task.Block is { IsCarrier: true }
                    ? []
                    : problem.Links.Crossed(problem.NetworkFrom(task.Sender, task.Receiver), task.Sender, task.Receiver)
            )
            {
                if (!passing.TryGetValue((at, task.Sender), out var tasks))
                {
                    passing.Add((at, task.Sender), tasks = []);
                }

                tasks.Add(task);
            }
        }

        var loads = (long[])problem.Links.Staying.Clone();
        var isPassed = new bool[loads.Length];
        foreach (var ((at, sender), tasks) in passing)
        {
            var added = Math.Max(Tied(at, sender, tasks), Packed(at, sender, tasks));
            isPassed[at] |= added > 0;
            loads[at] += added;
        }

        for (var at = 0; at < loads.Length; at++)
        {
            if (isPassed[at] && loads[at] > problem.Links.Most[at])
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>What blocks add to a direction that sources cannot do without, in bit/s.</summary>
    private long Tied(int at, int sender, List<WiringTask> tasks)
    {
        floor ??= new WiringFloor(problem);
        var units = new HashSet<int>();
        foreach (var task in tasks)
        {
            foreach (var source in task.Wanted.Concat(task.Sources))
            {
                if (
                    source >= 0
                    && floor.TiedBlock(new Delivery(source, source, 1, sender, task.Receiver)) is >= 0 and var block
                    && !problem.TransmitBlocks[block].IsCarrier
                )
                {
                    units.Add(problem.Links.UnitOf(block));
                }
            }
        }

        return units.Sum(unit => problem.Links.IsCrossedByStaying(unit, at) ? 0 : problem.Links.Rate(unit, at));
    }

    /// <summary>
    /// What a sender adds to a direction at least: room for every source, and a run of slots for all that a block which sounds everywhere must not share.
    /// </summary>
    private long Packed(int at, int sender, List<WiringTask> tasks)
    {
        var (least, widest, free) = (long.MaxValue, 1, 0);
        foreach (var block in tables.BlocksOf[sender])
        {
            var unit = problem.Links.UnitOf(block.Id);
            if (problem.Links.IsCrossedByStaying(unit, at) || block.IsCarrier)
            {
                free += block.Width;
                continue;
            }

            least = Math.Min(least, problem.Links.Rate(unit, at));
            widest = Math.Max(widest, block.Width);
        }

        // What fixed slots carry beside what is wanted is no violation, so that blocks which want different signals may share such slots.
        var isFree = sinks.MayFill is null && !Array.Exists(tables.BlocksOf[sender], block => tables.IsParticular[block.Id]);
        var sources = new HashSet<int>();
        var runs = new Dictionary<int, HashSet<string>>();
        foreach (var task in tasks)
        {
            // A source that is a slot itself may travel together with what it carries.
            sources.UnionWith(task.Wanted.Concat(task.Sources).Where(source => source >= 0 && problem.TransmitBlockOf[source] < 0));
            if (
                isFree
                && task.Block is { IsKept: false } block
                && floor!.IsFullBlock(block)
                && task.Wanted.All(source => source < 0 || problem.TransmitBlockOf[source] < 0)
            )
            {
                (runs.TryGetValue(block.Width, out var known) ? known : runs[block.Width] = []).Add(string.Join(' ', task.Wanted));
            }
        }

        var slots = runs.Count == 0 ? 0 : runs.Max(entry => entry.Key * entry.Value.Count);
        var streams = (Math.Max(0, Math.Max(sources.Count, slots) - free) + widest - 1) / widest;
        return streams == 0 || least == long.MaxValue ? 0 : streams * least;
    }
}
