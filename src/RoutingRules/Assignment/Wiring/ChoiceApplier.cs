using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Carries choices out on the state of a wiring.</summary>
internal sealed class ChoiceApplier(AssignmentProblem problem, WiringState state, WiringTables tables, WiringSinks sinks)
{
    public bool Apply(WiringTask task, Choice choice)
    {
        for (var i = 0; i < choice.Blocks.Length; i++)
        {
            if (!Take(choice.Blocks[i], choice.From, choice.Starts[i], task))
            {
                return false;
            }
        }

        for (var i = 0; i < choice.Slots.Length; i++)
        {
            if (problem.IsBarred[choice.ReceiveSlotOf(i)] || !state.Slots.Fill(choice.Slots[i], task.Sources[i]))
            {
                return false;
            }
        }

        if (task.Block is not null)
        {
            foreach (var other in task.SameStream)
            {
                var start = state.StartOf(other.Block!.Id);
                if (start >= 0 && problem.TransmitBlockOf[start] != choice.From.Id)
                {
                    return false;
                }
            }

            for (var position = 0; position < task.Wanted.Length; position++)
            {
                if (task.Kept[position])
                {
                    state.CountChanges(choice.Starts[0] + position, task.Block);
                }
            }
        }
        else if (task.IsKept)
        {
            for (var i = 0; i < choice.Slots.Length; i++)
            {
                state.CountChanges(choice.Slots[i], choice.BlockOf(i));
                state.CountSinks(task.Feeders[i] == choice.ReceiveSlotOf(i) ? 0 : task.Staying.Count);
            }
        }

        return true;
    }

    /// <summary>Subscribes a receive block and checks every position that sounds at an output.</summary>
    private bool Take(ReceiveBlock block, TransmitBlock from, int start, WiringTask task)
    {
        if (!state.Subscribe(block, from, start))
        {
            return false;
        }

        for (var position = 0; position < block.Width; position++)
        {
            var slot = start + position;
            if (!block.IsKept && tables.IsExposed(block, position) && !state.Slots.Expose(slot))
            {
                return false;
            }

            var wanted = task.Block == block ? task.Wanted[position] : -1;
            if (wanted >= 0 && !state.Slots.Fill(slot, wanted))
            {
                return false;
            }

            foreach (var output in problem.FixedOutputsOf[block.First + position])
            {
                if (problem.BlockOf[output] is { } together && !Array.Exists(together, sink => sinks.SourceAt[sink] >= 0))
                {
                    continue;
                }

                if (sinks.SourceAt[output] >= 0)
                {
                    if (!state.Slots.Fill(slot, sinks.SourceAt[output]))
                    {
                        return false;
                    }
                }
                else if (
                    problem.MustBeSilent[output]
                    && !(block.IsKept && sinks.StaysAsIs(output, block.First + position))
                    && !(sinks.MayFill?[output] ?? false)
                    && !state.Slots.Silence(slot, output)
                )
                {
                    return false;
                }
            }
        }

        return true;
    }
}
