using RoutingRules.Assignment.Problem;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Divides tasks into parts that cannot influence each other.</summary>
internal sealed class WiringParts(AssignmentProblem problem, WiringTables tables, WiringRelevance relevance)
{
    /// <summary>
    /// Parts that share no sender, no receiver that might run short of streams or blocks, and no link that might fill up; receive blocks before free
    /// needs.
    /// </summary>
    public List<WiringTask[]> Of(List<WiringTask> all)
    {
        var devices = problem.DeviceCount;
        var sets = new DisjointSets(devices * 2);
        var isTight = TightReceivers(all);
        foreach (var task in all)
        {
            if (isTight[task.Receiver])
            {
                sets.Join(task.Sender, devices + task.Receiver);
            }
        }

        JoinByLinks(all, sets);
        var byRoot = new List<WiringTask>?[devices * 2];
        var parts = new List<List<WiringTask>>();
        foreach (var task in all)
        {
            ref var part = ref byRoot[sets.Find(task.Sender)];
            if (part is null)
            {
                part = [];
                parts.Add(part);
            }

            part.Add(task);
        }

        return parts.ConvertAll(part => part.ToArray());
    }

    /// <summary>Receivers whose senders, each taken at its most, could together exceed the limit of streams or the number of blocks.</summary>
    private bool[] TightReceivers(List<WiringTask> all)
    {
        var devices = problem.DeviceCount;
        var wanted = new int[devices * devices];
        var hasNeed = new bool[devices];
        foreach (var task in all)
        {
            hasNeed[task.Receiver] |= task.Block is null;
            wanted[(task.Receiver * devices) + task.Sender] += Math.Max(task.Sources.Length, 1);
        }

        var isTight = new bool[devices];
        for (var receiver = 0; receiver < devices; receiver++)
        {
            long streams = 0;
            long blocks = 0;
            for (var sender = 0; sender < devices; sender++)
            {
                var count = wanted[(receiver * devices) + sender];
                if (count > 0)
                {
                    streams += Math.Min(count, tables.BlocksOf[sender].Length);
                    blocks += Math.Min(count, RunsOf(sender, receiver));
                }
            }

            // Where demands stay, a block that fed one in the input is not as good as any other; nor is one that sounds at outputs by itself.
            isTight[receiver] =
                streams > 0
                && (
                    (hasNeed[receiver] && tables.HasFedOutputs[receiver])
                    || streams + tables.KeptStreams[receiver] > problem.ReceivedLimit[receiver]
                    || blocks > tables.FreeBlocks[receiver]
                    || relevance.HasKept[receiver]
                );
        }

        return isTight;
    }

    /// <summary>How many runs of slots of a sender a receiver's narrowest block could take.</summary>
    private int RunsOf(int sender, int receiver)
    {
        var narrowest = int.MaxValue;
        foreach (var block in tables.ReceiveBlocksOf[receiver])
        {
            narrowest = Math.Min(narrowest, block.Width);
        }

        var runs = 0;
        foreach (var block in tables.BlocksOf[sender])
        {
            runs += Math.Max(1, block.Width / narrowest);
        }

        return runs;
    }

    /// <summary>Joins senders whose streams may meet on a link that might fill up.</summary>
    private void JoinByLinks(List<WiringTask> all, DisjointSets senders)
    {
        if (problem.Links.Count == 0)
        {
            return;
        }

        // How many streams each sender could at most send over each direction: one for each task, and one for each block that goes on to others.
        var streams = new SortedDictionary<(int At, int Sender), int>();
        var seen = new HashSet<int>();
        foreach (var task in all)
        {
            Count(task.Sender, task.Receiver);
            foreach (var block in tables.HasBystanders && seen.Add(task.Sender) ? tables.BlocksOf[task.Sender] : [])
            {
                block.Bystanders.ForEach(other => Count(task.Sender, problem.ReceiveBlocks[other].Device));
            }
        }

        var loads = (long[])problem.Links.Staying.Clone();
        foreach (var ((at, sender), count) in streams)
        {
            long fastest = 0;
            foreach (var block in tables.BlocksOf[sender])
            {
                fastest = Math.Max(fastest, block.IsCarrier ? 0 : problem.Links.Rate(problem.Links.UnitOf(block.Id), at));
            }

            loads[at] += fastest * Math.Min(count, tables.BlocksOf[sender].Length);
        }

        var first = new int[loads.Length];
        Array.Fill(first, -1);
        foreach (var ((at, sender), _) in streams)
        {
            if (loads[at] > problem.Links.Most[at])
            {
                first[at] = first[at] < 0 ? sender : first[at];
                senders.Join(first[at], sender);
            }
        }

        void Count(int sender, int receiver)
        {
            foreach (var at in problem.Links.Crossed(problem.NetworkFrom(sender, receiver), sender, receiver))
            {
                streams[(at, sender)] = streams.GetValueOrDefault((at, sender)) + 1;
            }
        }
    }
}
