using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>The sinks that the demands in hand take, and what follows from them before anything is chosen.</summary>
internal sealed class WiringSinks(AssignmentProblem problem, WiringState state)
{
    private readonly List<int> points = [];

    /// <summary>For each sink the source that is placed there; -1 for none.</summary>
    public int[] SourceAt { get; } = Enumerable.Repeat(-1, problem.Show.Graph.PointCount).ToArray();

    /// <summary>Outputs that demands still to be placed may take, so that they need not be silent yet; null for none.</summary>
    public bool[]? MayFill { get; private set; }

    /// <summary>True when slots are filled before any task, so that a part is not known by its tasks alone.</summary>
    public bool FillsSlots { get; private set; }

    public void Place(IReadOnlyList<WiringDemand> demands, bool[]? mayFill)
    {
        MayFill = mayFill;
        foreach (var (delivery, _) in demands)
        {
            for (var position = 0; position < delivery.Width; position++)
            {
                SourceAt[delivery.Sink + position] = delivery.Source + position;
                points.Add(delivery.Sink + position);
            }
        }
    }

    public void Clear()
    {
        points.ForEach(point => SourceAt[point] = -1);
        points.Clear();
    }

    /// <summary>Fills the transmit slots that lines name themselves; false when one cannot carry its line.</summary>
    public bool FillSlots(IReadOnlyList<WiringDemand> demands)
    {
        FillsSlots = false;
        foreach (var (delivery, _) in demands)
        {
            for (var position = 0; delivery.IsLocal && problem.TransmitBlockOf[delivery.Sink] >= 0 && position < delivery.Width; position++)
            {
                FillsSlots = true;
                if (!state.Slots.Fill(delivery.Sink + position, delivery.Source + position))
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Counts the sinks of demands that stay and that take their signal from another point, where that needs no choice of the wiring.</summary>
    public void CountSettled(IReadOnlyList<WiringDemand> demands)
    {
        foreach (var (delivery, isKept) in demands)
        {
            for (var position = 0; isKept && position < delivery.Width; position++)
            {
                var sink = delivery.Sink + position;
                var feeder = delivery.IsLocal ? delivery.Source + position : problem.ReceiveSlotOf(sink);
                if (feeder < 0 || feeder == sink)
                {
                    continue;
                }

                if (problem.TransmitBlockOf[sink] >= 0)
                {
                    state.CountSlot(sink);
                }
                else
                {
                    state.CountSinks(state.Slots.InputContent(sink) == feeder ? 0 : 1);
                }
            }
        }
    }

    /// <summary>False when a kept stream would sound at an idle output because a device routes it together with one that is taken.</summary>
    public bool KeptComeAlongSilent()
    {
        foreach (var block in problem.ReceiveBlocks)
        {
            for (var position = 0; block.IsKept && state.StartOf(block.Id) >= 0 && position < block.Width; position++)
            {
                foreach (var output in problem.FixedOutputsOf[block.First + position])
                {
                    if (
                        problem.BlockOf[output] is { } together
                        && Array.Exists(together, sink => SourceAt[sink] >= 0)
                        && SourceAt[output] < 0
                        && problem.MustBeSilent[output]
                        && !StaysAsIs(output, block.First + position)
                        && !(MayFill?[output] ?? false)
                        && !state.Slots.Silence(state.StartOf(block.Id) + position, output)
                    )
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }

    /// <summary>True when an output hears a slot whatever is chosen: always, or by a block that is routed so already.</summary>
    public bool StaysAsIs(int output, int slot) => problem.BlockOf[output] is null || problem.Show.Graph.Upstreams[output] == slot;
}
