using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>What of the input matters to the tasks in hand: all else is alike.</summary>
internal sealed class WiringRelevance(AssignmentProblem problem, WiringState state, WiringTables tables)
{
    /// <summary>Transmit blocks whose contents or receivers in the input matter.</summary>
    public bool[] IsRelevant { get; } = new bool[problem.TransmitBlocks.Length];

    /// <summary>Receive blocks that a task is about.</summary>
    public bool[] IsTasked { get; } = new bool[problem.ReceiveBlocks.Length];

    /// <summary>Receivers of demands that stay.</summary>
    public bool[] HasKept { get; } = new bool[problem.DeviceCount];

    /// <summary>For each sender the slots in a row among which no receiver of a free need can tell two alike ones apart.</summary>
    public int[] RunWidth { get; } = new int[problem.DeviceCount];

    /// <summary>Slots that arrive somewhere without any route.</summary>
    public bool[] SoundsByItself { get; } = new bool[problem.Show.Graph.PointCount];

    /// <summary>Sources of demands that stay.</summary>
    public HashSet<int> KeptSources { get; } = [];

    /// <summary>Transmit slots from which sinks of demands that stay are fed in the input.</summary>
    public HashSet<int> Standing { get; } = [];

    /// <summary>True for a receive block that takes nothing yet and that no task is about.</summary>
    public bool IsFree(ReceiveBlock block) => state.StartOf(block.Id) == -1 && !IsTasked[block.Id];

    /// <summary>Blocks whose contents or receivers in the input matter to this wiring.</summary>
    public void Find(List<WiringTask> all)
    {
        var sources = KeptSources;
        sources.Clear();
        Standing.Clear();
        Array.Clear(IsTasked);
        Array.Clear(HasKept);
        Array.Clear(SoundsByItself);
        Array.Clear(RunWidth);
        foreach (var task in all)
        {
            if (task.Block is null && tables.HasFedOutputs[task.Receiver])
            {
                MarkSounding(task);
            }

            if (task.Block is { } block)
            {
                IsTasked[block.Id] = true;
            }

            // Where something private travels, it matters which slots arrive where.
            if (problem.Exposure.IsAny && (Array.Exists(task.Sources, problem.Exposure.IsPrivate) || Array.Exists(task.Wanted, problem.Exposure.IsPrivate)))
            {
                foreach (var from in tables.BlocksOf[task.Sender])
                {
                    SoundsByItself.AsSpan(from.First, from.Width).Fill(true);
                }
            }

            foreach (var receiver in task.Block is null ? tables.ReceiveBlocksOf[task.Receiver] : [])
            {
                RunWidth[task.Sender] = task.PortGroups.Contains(receiver.PortGroup)
                    ? CommonWidth(RunWidth[task.Sender], receiver.Width)
                    : RunWidth[task.Sender];
            }

            for (var position = 0; position < task.Wanted.Length; position++)
            {
                if (task.Kept[position])
                {
                    sources.Add(task.Wanted[position]);
                    Standing.Add(task.Block!.InputStart < 0 ? -1 : task.Block.InputStart + position);
                }
            }

            foreach (var feeder in task.Feeders)
            {
                Standing.Add(SentTo(feeder));
            }

            sources.UnionWith(task.IsKept ? task.Sources : []);
            HasKept[task.Receiver] |= task.IsKept;
        }

        foreach (var transmit in problem.TransmitBlocks)
        {
            var relevant = transmit.Bystanders.Count > 0 || transmit.IsKept || tables.IsParticular[transmit.Id];
            for (var slot = transmit.First; slot < transmit.First + transmit.Width; slot++)
            {
                relevant |= sources.Contains(state.Slots.InputContent(slot)) || (state.Slots.ContentOf(slot) != SlotContents.Undecided && !transmit.IsKept);
            }

            IsRelevant[transmit.Id] = relevant;
        }
    }

    /// <summary>
    /// Marks the slots that sound at an output without any route, or may meet a dead or reserved slot, when a block that serves a free need takes them.
    /// </summary>
    private void MarkSounding(WiringTask task)
    {
        foreach (var block in tables.ReceiveBlocksOf[task.Receiver])
        {
            if (!tables.FeedsOutputs[block.Id] || !task.PortGroups.Contains(block.PortGroup))
            {
                continue;
            }

            var hasBarred = tables.HasBarred(block.First, block.Width);

            foreach (var from in tables.BlocksOf[task.Sender])
            {
                for (var slot = from.First; slot < from.First + from.Width; slot++)
                {
                    var position = (slot - from.First) % block.Width;
                    SoundsByItself[slot] |= hasBarred || problem.FixedOutputsOf[block.First + position].Length > 0 || tables.IsExposed(block, position);
                }
            }
        }
    }

    /// <summary>The transmit slot that a receive slot takes in the input; -1 for none.</summary>
    private int SentTo(int receive) =>
        receive >= 0 && problem.ReceiveBlockOf[receive] is >= 0 and var id && problem.ReceiveBlocks[id] is { InputStart: >= 0 } block
            ? block.InputStart + receive - block.First
            : -1;

    /// <summary>The widest run that two widths are whole multiples of; 0 stands for any width.</summary>
    private static int CommonWidth(int one, int other)
    {
        while (other != 0)
        {
            (one, other) = (other, one % other);
        }

        return one;
    }
}
