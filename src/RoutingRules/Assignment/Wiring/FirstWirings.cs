using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Wirings to begin with, so that a search has something to beat: that of the input, and for many tasks one that is packed in one go.</summary>
internal sealed class FirstWirings(AssignmentProblem problem, WiringState state, WiringTables tables, ChoiceApplier applier, RankedOptions ranked)
{
    /// <summary>Fewer tasks are searched without a packed wiring.</summary>
    private const int LeastPacked = 10;

    private readonly StandingChoice standing = new(problem, state);

    /// <summary>Applies the wiring of the input where it serves every task; null, and nothing applied, when it does not.</summary>
    public Choice?[]? Stand(WiringTask[] tasks)
    {
        var mark = state.Mark;
        var choices = new Choice?[tasks.Length];
        for (var i = 0; i < tasks.Length; i++)
        {
            if (standing.Of(tasks[i]) is not { } choice || !applier.Apply(tasks[i], choice))
            {
                state.Undo(mark);
                return null;
            }

            choices[i] = choice;
        }

        return choices;
    }

    /// <summary>
    /// Applies a wiring made receiver by receiver: whole blocks of its own first, then what is left over where it fits best. Null, and nothing applied,
    /// when the tasks are few or do not fit this way.
    /// </summary>
    public Choice?[]? Pack(WiringTask[] tasks)
    {
        if (tasks.Length < LeastPacked || Array.TrueForAll(tasks, task => task.Block is not null))
        {
            return null;
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
            .ThenByDescending(index => remaining[tasks[index].Receiver] % tables.ReceiveBlocksOf[tasks[index].Receiver][0].Width)
            .ThenBy(index => tasks[index].Receiver)
            .ThenByDescending(index => tasks[index].Sources.Length);
        var packed = new Choice?[tasks.Length];
        foreach (var index in sequence)
        {
            if (Fitting(tasks[index], remaining[tasks[index].Receiver]) is not { } choice || !applier.Apply(tasks[index], choice))
            {
                state.Undo(mark);
                return null;
            }

            packed[index] = choice;
            remaining[tasks[index].Receiver] -= tasks[index].Sources.Length;
        }

        return packed;
    }

    private Choice? Fitting(WiringTask task, int remaining)
    {
        var options = ranked.Of(task);
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
                open += state.Slots.ContentOf(slot) == SlotContents.Undecided ? 1 : 0;
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
