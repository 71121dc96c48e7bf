using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Reads the wiring that is applied.</summary>
internal sealed class WiringReader(AssignmentProblem problem, WiringState state)
{
    public WiringPlan Read(List<WiringTask> all, bool isBest)
    {
        var starts = new int[problem.ReceiveBlocks.Length];
        var used = new SortedSet<int>();
        foreach (var block in problem.ReceiveBlocks)
        {
            starts[block.Id] = block.IsKept ? -1 : state.StartOf(block.Id);
            if (starts[block.Id] >= 0)
            {
                used.Add(problem.TransmitBlockOf[starts[block.Id]]);
            }
        }

        var contents = new List<(int Slot, int Source)>();
        var untouched = new List<int>();
        foreach (var block in problem.TransmitBlocks)
        {
            var isShared = block.Bystanders.Exists(bystander => starts[bystander] >= 0);
            for (var slot = block.First; slot < block.First + block.Width; slot++)
            {
                if (!block.IsKept && state.Slots.ContentOf(slot) >= 0)
                {
                    contents.Add((slot, state.Slots.ContentOf(slot)));
                }
                else if (isShared && state.Slots.ContentOf(slot) == SlotContents.Undecided && !state.Slots.IsOverheard(slot))
                {
                    untouched.Add(slot);
                }
            }
        }

        var routes = new List<(int Slot, int Sink)>();
        foreach (var task in all)
        {
            foreach (var sink in task.Sinks)
            {
                for (var i = 0; i < task.Served.Length; i++)
                {
                    routes.Add((task.Served[i], sink + i));
                }
            }
        }

        return new WiringPlan
        {
            Cost = state.Cost,
            IsBest = isBest,
            Contents = [.. contents],
            Untouched = [.. untouched],
            UsedTransmit = [.. used.Where(id => !problem.TransmitBlocks[id].IsKept)],
            ReceiveStart = starts,
            FreeRoutes = [.. routes],
        };
    }
}
