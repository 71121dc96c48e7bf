using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <content>Second copies of a source, which may send receivers away that no demand mentions.</content>
internal sealed partial class WiringSolver
{
    /// <summary>True while each sink of a free need is wired for itself, and every free slot counts.</summary>
    private bool triesCopies;

    /// <summary>Looks for a cheaper wiring with a slot for each sink: what changes in a slot sends receivers away, and with them their blocks.</summary>
    /// <returns>True when what is best now holds for the tasks of <see cref="Apart"/>.</returns>
    private bool SearchCopies(WiringTask[] part, long budget)
    {
        // Such receivers cost nothing; they are in the way only where a link has no room for them, or two demands must not share one with them.
        if (!ListenersMatter || open is not null || ranOut || budget == 0 || !Array.Exists(part, task => MayBeCopied(task, part)))
        {
            return false;
        }

        var before = bestChoices;
        tasks = Apart(part);
        current = new Choice?[tasks.Length];
        limit = Work + budget;
        triesCopies = true;
        Search(0, firstOnly: false);
        triesCopies = false;
        return hasBest && bestChoices != before;
    }

    private bool ListenersMatter => hasBystanders && (problem.Links.Count > 0 || accept is not null);

    /// <summary>True for a free need whose source goes to several sinks beside receivers that no demand mentions.</summary>
    private bool MayBeCopied(WiringTask task, WiringTask[] part) =>
        task.Block is null
        && feedsBystanders[task.Sender]
        && Array.Exists(
            task.Sources,
            source =>
                part.Sum(other =>
                    other.Sender != task.Sender ? 0
                    : other.Sources.Contains(source) ? other.Sinks.Count
                    : other.Wanted.Count(wanted => wanted == source)
                ) > 1
        );

    /// <summary>The tasks with one for each sink where receivers that no demand mentions listen to the sender.</summary>
    private WiringTask[] Apart(WiringTask[] part) =>
        [.. part.SelectMany(task => task.Block is null && feedsBystanders[task.Sender] ? task.Sinks.Select(sink => task.For(sink)) : [task])];

    private List<int> SlotsFor(WiringTask task, int side, TransmitBlock from, int taken) =>
        triesCopies && from.Bystanders.Count > 0
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
                (state.StartOf(block.Id) == start || IsFree(block))
                && slot != taken
                && !slots.Contains(slot)
                && (state.ContentOf(slot) == task.Sources[side] || slot == task.Sources[side] || state.IsOpenTo(slot, task.Sources[side]))
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
        var carrying = slots.Where(slot => state.ContentOf(slot) == source || slot == source).ToList();
        return [.. carrying, .. slots.Where(slot => !carrying.Contains(slot) && state.IsOpenTo(slot, source))];
    }
}
