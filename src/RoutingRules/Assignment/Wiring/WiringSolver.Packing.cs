using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <content>A first wiring for many tasks: receiver by receiver, whole blocks of its own first, then what is left over where it fits best.</content>
internal sealed partial class WiringSolver
{
    /// <summary>Parts of fewer tasks are searched without a first wiring.</summary>
    private const int LeastPacked = 10;

    /// <summary>Leaves the first wiring as the best so far; without effect when the tasks do not fit this way.</summary>
    private void Pack()
    {
        if (tasks.Length < LeastPacked || Array.TrueForAll(tasks, task => task.Block is not null))
        {
            return;
        }

        var mark = state.Mark;
        var remaining = new int[problem.DeviceCount];
        foreach (var task in tasks)
        {
            remaining[task.Receiver] += task.Sources.Length;
        }

        // Receivers with more left over go first, so that small remainders fill the gaps of large ones.
        var sequence = Enumerable
            .Range(0, tasks.Length)
            .OrderBy(index => tasks[index].Block is null ? 1 : 0)
            .ThenByDescending(index => remaining[tasks[index].Receiver] % receiveBlocksOf[tasks[index].Receiver][0].Width)
            .ThenBy(index => tasks[index].Receiver)
            .ThenByDescending(index => tasks[index].Sources.Length);
        var packed = new Choice?[tasks.Length];
        foreach (var index in sequence)
        {
            if (Fitting(tasks[index], remaining[tasks[index].Receiver]) is not { } choice || !Apply(tasks[index], choice))
            {
                state.Undo(mark);
                return;
            }

            packed[index] = choice;
            remaining[tasks[index].Receiver] -= tasks[index].Sources.Length;
        }

        Accept(packed);
        state.Undo(mark);
    }

    /// <summary>Leaves the wiring of the input as the best so far where it serves every task: another one has to be cheaper.</summary>
    private void Stand()
    {
        var mark = state.Mark;
        var standing = new Choice?[tasks.Length];
        for (var i = 0; i < tasks.Length; i++)
        {
            if ((tasks[i].Block is null ? StandingNeed(tasks[i]) : StandingBlock(tasks[i])) is not { } choice || !Apply(tasks[i], choice))
            {
                state.Undo(mark);
                return;
            }

            standing[i] = choice;
        }

        Accept(standing);
        state.Undo(mark);
    }

    /// <summary>Takes the wiring that is applied as the best, if it may be used and nothing as cheap is known.</summary>
    private void Accept(Choice?[] choices)
    {
        // While outputs may still be filled, contents may still change and send receivers away that no demand mentions.
        var fits = !hasBystanders || open is not null || state.AddBystanders(tasks);
        choices.CopyTo(current, 0);
        if (fits && (!hasBest || state.Cost.CompareTo(best, order) < 0) && IsAccepted())
        {
            best = state.Cost;
            hasBest = true;
            bestChoices = [.. choices];
        }
    }

    /// <summary>What a receive block takes in the input, if that is what is wanted.</summary>
    private Choice? StandingBlock(WiringTask task)
    {
        var start = task.Block!.InputStart;
        if (BlockAt(start) is not { } from || from.Device != task.Sender || from.IsCarrier != task.Block.IsCarrier)
        {
            return null;
        }

        for (var position = 0; position < task.Wanted.Length; position++)
        {
            if (task.Wanted[position] >= 0 && state.InputContent(start + position) != task.Wanted[position])
            {
                return null;
            }
        }

        return new Choice
        {
            From = from,
            Blocks = [task.Block],
            Starts = [start],
            Rank = 0,
        };
    }

    /// <summary>The transmit block of a slot; null for none, or one of an excluded device.</summary>
    private TransmitBlock? BlockAt(int slot) => slot >= 0 && problem.TransmitBlockOf[slot] is >= 0 and var id ? problem.TransmitBlocks[id] : null;

    /// <summary>How the sinks of a free need get their sources in the input, if they all do in one way.</summary>
    private Choice? StandingNeed(WiringTask task)
    {
        var slots = new int[task.Sources.Length];
        var blocks = new List<ReceiveBlock>();
        for (var i = 0; i < slots.Length; i++)
        {
            var receive = task.IsKept ? task.Feeders[i] : state.InputContent(task.Sinks[0] + i);
            var id = receive < 0 ? -1 : problem.ReceiveBlockOf[receive];
            if (id < 0 || problem.ReceiveBlocks[id].InputStart < 0 || (!task.IsKept && !task.Sinks.TrueForAll(sink => state.InputContent(sink + i) == receive)))
            {
                return null;
            }

            slots[i] = problem.ReceiveBlocks[id].InputStart + receive - problem.ReceiveBlocks[id].First;
            if (state.InputContent(slots[i]) != task.Sources[i])
            {
                return null;
            }

            if (!blocks.Contains(problem.ReceiveBlocks[id]))
            {
                blocks.Add(problem.ReceiveBlocks[id]);
            }
        }

        return
            BlockAt(slots[0]) is { } from
            && from.Device == task.Sender
            && Array.TrueForAll(slots, slot => problem.TransmitBlockOf[slot] == from.Id)
            && blocks.TrueForAll(block => block.IsCarrier == from.IsCarrier)
            ? new Choice
            {
                From = from,
                Blocks = [.. blocks],
                Starts = [.. blocks.Select(block => block.InputStart)],
                Slots = slots,
                BySide = blocks.Count > 1 ? [.. blocks] : null,
                Rank = 0,
            }
            : null;
    }

    private Choice? Fitting(WiringTask task, int remaining)
    {
        var options = Options(task);
        if (task.Block is not null || options.Count == 0)
        {
            return options.Count == 0 ? null : options[0];
        }

        var rest = Math.Min(remaining, options[0].Blocks[0].Width);
        Choice? best = null;
        var bestRank = (Receive: int.MaxValue, Lacking: 0, Left: 0);
        foreach (var choice in options)
        {
            var open = 0;
            for (var slot = choice.From.First; slot < choice.From.First + choice.From.Width; slot++)
            {
                open += state.ContentOf(slot) == WiringState.Undecided ? 1 : 0;
            }

            var rank = (choice.Cost.Receive - state.Cost.Receive, Math.Max(0, rest - open), open);
            if (rank.CompareTo(bestRank) < 0)
            {
                (best, bestRank) = (choice, rank);
            }
        }

        return best;
    }
}
