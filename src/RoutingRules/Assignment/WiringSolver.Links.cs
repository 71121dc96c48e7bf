using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <content>Links that may fill up.</content>
internal sealed partial class WiringSolver
{
    /// <summary>Joins senders whose streams may meet on a link that might fill up.</summary>
    private void JoinByLinks(List<WiringTask> all, DisjointSets senders)
    {
        if (problem.Links.Count == 0)
        {
            return;
        }

        var first = new int[problem.Links.Count];
        Array.Fill(first, -1);
        foreach (var task in all)
        {
            Join(task.Sender, task.Receiver);
            foreach (var block in hasBystanders ? blocksOf[task.Sender] : [])
            {
                block.Bystanders.ForEach(other => Join(task.Sender, problem.ReceiveBlocks[other].Device));
            }
        }

        void Join(int sender, int receiver)
        {
            foreach (var at in problem.Links.Crossed(problem.NetworkFrom(sender, receiver), sender, receiver))
            {
                first[at] = first[at] < 0 ? sender : first[at];
                senders.Join(first[at], sender);
            }
        }
    }

    /// <summary>False when the sources that have to pass a link do not fit on it however closely they are packed.</summary>
    private bool MayCross(WiringTask[] part)
    {
        var sources = new Dictionary<(int At, int Sender), HashSet<int>>();
        foreach (var task in part)
        {
            foreach (var at in task.Block is { IsCarrier: true } ? [] : problem.Links.Crossed(problem.NetworkFrom(task.Sender, task.Receiver), task.Sender, task.Receiver))
            {
                if (!sources.TryGetValue((at, task.Sender), out var set))
                {
                    sources.Add((at, task.Sender), set = []);
                }

                // A source that is a slot itself may travel together with what it carries.
                set.UnionWith(task.Wanted.Concat(task.Sources).Where(source => source >= 0 && problem.TransmitBlockOf[source] < 0));
            }
        }

        var loads = (long[])problem.Links.Staying.Clone();
        var isPassed = new bool[loads.Length];
        foreach (var ((at, sender), set) in sources)
        {
            var (least, widest, free) = (long.MaxValue, 1, 0);
            foreach (var block in blocksOf[sender])
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

            var streams = (Math.Max(0, set.Count - free) + widest - 1) / widest;
            isPassed[at] |= streams > 0;
            loads[at] += streams == 0 || least == long.MaxValue ? 0 : streams * least;
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
}
