using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>How the input serves tasks.</summary>
internal sealed class StandingChoice(AssignmentProblem problem, WiringState state)
{
    /// <summary>How a task is served in the input; null when it is not.</summary>
    public Choice? Of(WiringTask task) => task.Block is null ? Need(task) : Block(task);

    /// <summary>What a receive block takes in the input, if that is what is wanted.</summary>
    private Choice? Block(WiringTask task)
    {
        var start = task.Block!.InputStart;
        if (BlockAt(start) is not { } from || from.Device != task.Sender || from.IsCarrier != task.Block.IsCarrier)
        {
            return null;
        }

        for (var position = 0; position < task.Wanted.Length; position++)
        {
            if (task.Wanted[position] >= 0 && state.Slots.InputContent(start + position) != task.Wanted[position])
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
    private Choice? Need(WiringTask task)
    {
        var slots = new int[task.Sources.Length];
        var blocks = new List<ReceiveBlock>();
        for (var i = 0; i < slots.Length; i++)
        {
            var receive = task.IsKept ? task.Feeders[i] : state.Slots.InputContent(task.Sinks[0] + i);
            var id = receive < 0 ? -1 : problem.ReceiveBlockOf[receive];
            if (
                id < 0
                || problem.ReceiveBlocks[id].InputStart < 0
                || (!task.IsKept && !task.Sinks.TrueForAll(sink => state.Slots.InputContent(sink + i) == receive))
            )
            {
                return null;
            }

            slots[i] = problem.ReceiveBlocks[id].InputStart + receive - problem.ReceiveBlocks[id].First;
            if (state.Slots.InputContent(slots[i]) != task.Sources[i])
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
}
