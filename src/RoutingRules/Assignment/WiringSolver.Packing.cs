namespace RoutingRules.Assignment;

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
        var sequence = Enumerable.Range(0, tasks.Length)
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

        var fits = !hasBystanders || state.AddBystanders(tasks) || open is not null;
        packed.CopyTo(current, 0);
        if (fits && IsAccepted())
        {
            best = state.Cost;
            hasBest = true;
            bestChoices = packed;
        }

        state.Undo(mark);
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
