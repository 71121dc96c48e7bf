using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>The transmit slots in which a source may travel to sinks that are routed freely.</summary>
internal sealed class WiringSlots(AssignmentProblem problem, WiringState state, WiringRelevance relevance)
{
    /// <summary>True while each sink of a free need is wired for itself, and every free slot counts.</summary>
    public bool TriesCopies { get; set; }

    /// <summary>
    /// In each run that receive blocks could take, or narrower ones of another receiver: the slots that carry the source, else a free slot of each
    /// worth: one that carried it in the input, one that takes nothing from a demand that stays, one for each source
    /// of demands that stay. Every free slot counts with bystanders, and each
    /// one that would sound at an output by itself.
    /// </summary>
    private List<int> Slots(TransmitBlock from, int source, int taken)
    {
        var slots = new List<int>();
        var width = relevance.RunWidth[from.Device];
        Span<int> byWorth = stackalloc int[3];
        for (var start = from.First; start < from.First + from.Width; start += width)
        {
            byWorth.Fill(-1);
            var (carries, sounds) = (false, false);
            for (var slot = start; slot < start + width; slot++)
            {
                if (slot == taken)
                {
                    continue;
                }

                if (state.Slots.ContentOf(slot) == source || slot == source)
                {
                    // Of several that carry it, one may arrive at a dead slot, or be what a demand that stays hangs on.
                    if (!problem.IsBarred[slot])
                    {
                        slots.Add(slot);
                        carries = true;
                        sounds |= relevance.SoundsByItself[slot];
                    }
                }
                else if (state.Slots.IsOpenTo(slot, source))
                {
                    // It makes a difference on which of several slots with its source a demand that stays hangs.
                    var worth =
                        state.Slots.InputContent(slot) == source ? 0
                        : relevance.KeptSources.Contains(state.Slots.InputContent(slot)) ? 2
                        : 1;
                    if (
                        relevance.SoundsByItself[slot]
                        || relevance.Standing.Contains(slot)
                        || (worth == 2 && byWorth[2] >= 0 && state.Slots.InputContent(slot) != state.Slots.InputContent(byWorth[2]))
                    )
                    {
                        slots.Add(slot);
                    }
                    else if (byWorth[worth] < 0)
                    {
                        byWorth[worth] = slot;
                    }
                    else if (from.Bystanders.Count > 0 && !carries)
                    {
                        slots.Add(slot);
                    }
                }
            }

            if (carries && from.Bystanders.Count == 0 && !sounds)
            {
                // A demand that stays may keep the slot it had although the source travels in another one too.
                if (byWorth[0] >= 0 && relevance.KeptSources.Contains(source))
                {
                    slots.Add(byWorth[0]);
                }

                continue;
            }

            foreach (var slot in byWorth)
            {
                if (slot >= 0)
                {
                    slots.Add(slot);
                }
            }
        }

        return slots;
    }

    public List<int> For(WiringTask task, int side, TransmitBlock from, int taken) =>
        TriesCopies && from.Bystanders.Count > 0
            ? EverySlot(from, task.Sources[side], taken)
            : WithUsual(task, side, from, taken, Slots(from, task.Sources[side], taken));

    /// <summary>Adds the slots that would arrive at the receive slot on which sinks that stay hang in the input.</summary>
    private List<int> WithUsual(WiringTask task, int side, TransmitBlock from, int taken, List<int> slots)
    {
        var feeder = task.IsKept ? task.Feeders[side] : -1;
        if (feeder < 0 || problem.ReceiveBlockOf[feeder] < 0)
        {
            return slots;
        }

        var block = problem.ReceiveBlocks[problem.ReceiveBlockOf[feeder]];
        for (var start = from.First; start + block.Width <= from.First + from.Width; start += block.Width)
        {
            var slot = start + feeder - block.First;
            if (
                (state.StartOf(block.Id) == start || relevance.IsFree(block))
                && slot != taken
                && !slots.Contains(slot)
                && (state.Slots.ContentOf(slot) == task.Sources[side] || slot == task.Sources[side] || state.Slots.IsOpenTo(slot, task.Sources[side]))
            )
            {
                slots.Add(slot);
            }
        }

        return slots;
    }

    /// <summary>The slots that carry a source already, then every free one.</summary>
    private List<int> EverySlot(TransmitBlock from, int source, int taken)
    {
        var slots = Enumerable.Range(from.First, from.Width).Where(slot => slot != taken).ToList();
        var carrying = slots.Where(slot => state.Slots.ContentOf(slot) == source || slot == source).ToList();
        return [.. carrying, .. slots.Where(slot => !carrying.Contains(slot) && state.Slots.IsOpenTo(slot, source))];
    }
}
