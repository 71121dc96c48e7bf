using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Searches the cheapest wiring of tasks that hang together: depth first, cheap options first. Not thread safe.</summary>
internal sealed class PartSearch(
    AssignmentProblem problem,
    WiringState state,
    WiringTables tables,
    WiringSinks sinks,
    WiringSlots slots,
    ChoiceApplier applier,
    RankedOptions ranked,
    ObjectiveLevel[] order
)
{
    /// <summary>Options tried before a search asks what its part costs at least.</summary>
    private const long CheapWork = 100;

    /// <summary>Options tried beyond the budget when no wiring has been found yet.</summary>
    private const long GraceWork = 20_000;

    /// <summary>The same where links may fill up, so that there often is none.</summary>
    private const long LeastGraceWork = 1_000;

    private readonly FirstWirings first = new(problem, state, tables, applier, ranked);
    private readonly LinkFloor links = new(problem, tables, sinks);
    private readonly WiringReader reader = new(problem, state);
    private Func<WiringPlan, bool>? accept;
    private long limit;
    private long grace;
    private bool ranOut;

    /// <summary>What the part in hand costs at least, with all before it; null until it is asked for.</summary>
    private WiringCost? cheapest;
    private WiringCost started;
    private long floorFrom;
    private WiringTask[] tasks = [];
    private WiringCost best;
    private bool hasBest;
    private Choice?[] current = [];
    private Choice?[] bestChoices = [];

    /// <summary>Searches; the state is afterwards what it was.</summary>
    /// <param name="part">The tasks.</param>
    /// <param name="budget">Options to try at most; 0 for the first wiring.</param>
    /// <param name="isAllowed">Says whether a wiring may be used at all; null when every one may.</param>
    /// <param name="isCut">True when it ended for its budget.</param>
    public WiringSolution Run(WiringTask[] part, long budget, Func<WiringPlan, bool>? isAllowed, out bool isCut)
    {
        accept = isAllowed;
        tasks = part;
        current = new Choice?[part.Length];
        hasBest = false;
        ranOut = false;
        limit = ranked.Work + Math.Max(budget, 1);
        grace = problem.Links.Count == 0 ? GraceWork : Math.Clamp(budget * 10, LeastGraceWork, GraceWork);
        var before = state.Cost;
        (started, cheapest, floorFrom) = (before, null, ranked.Work + CheapWork);
        if (problem.Links.Count == 0 || links.MayCross(part))
        {
            Begin(first.Stand);
            Begin(first.Pack);
            Search(0, budget == 0);
        }

        var isApart = SearchCopies(part, budget);
        isCut = ranOut;
        return new WiringSolution
        {
            IsApart = isApart,
            Choices = hasBest ? Array.ConvertAll(bestChoices, choice => choice!) : null,
            Cost = hasBest ? best - before : default,
            IsBest = !ranOut && budget > 0,
        };
    }

    /// <summary>Leaves a first wiring as the best so far: another one has to be cheaper.</summary>
    private void Begin(Func<WiringTask[], Choice?[]?> wire)
    {
        var mark = state.Mark;
        if (wire(tasks) is { } choices)
        {
            Accept(choices);
            state.Undo(mark);
        }
    }

    private void Search(int index, bool firstOnly)
    {
        if ((ranOut && hasBest) || IsHopeless())
        {
            return;
        }

        if (index == tasks.Length)
        {
            var before = state.Mark;
            Accept(current);
            state.Undo(before);

            ranOut |= firstOnly;
            return;
        }

        var mark = state.Mark;
        foreach (var choice in ranked.Of(tasks[index]))
        {
            if (hasBest && choice.Cost.CompareTo(best, order) >= 0)
            {
                break;
            }

            if (ranked.Work > limit)
            {
                ranOut = true;
                if (hasBest || ranked.Work > limit + grace)
                {
                    return;
                }
            }

            if (applier.Apply(tasks[index], choice))
            {
                current[index] = choice;
                Search(index + 1, firstOnly);
            }

            state.Undo(mark);
        }
    }

    /// <summary>True when nothing better than the best can come of what is applied. In small searches it is not worth asking.</summary>
    private bool IsHopeless()
    {
        if (!hasBest || ranked.Work < floorFrom)
        {
            return false;
        }

        cheapest ??= started + PartFloor.Of(tasks, tables.BlocksOf, tables.ReceiveBlocksOf);
        var now = state.Cost;
        var least = new WiringCost(now.Rewritten, Math.Max(now.Transmit, cheapest.Value.Transmit), Math.Max(now.Receive, cheapest.Value.Receive));
        return least.CompareTo(best, order) >= 0;
    }

    /// <summary>Takes the wiring that is applied as the best, if it may be used and nothing as cheap is known.</summary>
    private void Accept(Choice?[] choices)
    {
        // While outputs may still be filled, contents may still change and send receivers away that no demand mentions.
        var fits = !tables.HasBystanders || sinks.MayFill is not null || state.AddBystanders(tasks);
        choices.CopyTo(current, 0);
        if (fits && (!hasBest || state.Cost.CompareTo(best, order) < 0) && IsAccepted())
        {
            best = state.Cost;
            hasBest = true;
            bestChoices = [.. choices];
        }
    }

    private bool IsAccepted()
    {
        for (var i = 0; accept is not null && i < tasks.Length; i++)
        {
            var choice = current[i]!;
            tasks[i].Served = choice.ReceiveSlots;
        }

        return accept is null || accept(reader.Read([.. tasks], isBest: false));
    }

    /// <summary>Looks for a cheaper wiring with a slot for each sink: what changes in a slot sends receivers away, and with them their blocks.</summary>
    /// <returns>True when what is best now holds for the tasks of <see cref="Apart"/>.</returns>
    private bool SearchCopies(WiringTask[] part, long budget)
    {
        // Such receivers cost nothing; they are in the way only where a link has no room for them, or two demands must not share one with them.
        if (!ListenersMatter || sinks.MayFill is not null || ranOut || budget == 0 || !Array.Exists(part, task => MayBeCopied(task, part)))
        {
            return false;
        }

        var before = bestChoices;
        tasks = Apart(part);
        current = new Choice?[tasks.Length];
        limit = ranked.Work + budget;
        slots.TriesCopies = true;
        Search(0, firstOnly: false);
        slots.TriesCopies = false;
        return hasBest && bestChoices != before;
    }

    private bool ListenersMatter => tables.HasBystanders && (problem.Links.Count > 0 || accept is not null);

    /// <summary>True for a free need whose source goes to several sinks beside receivers that no demand mentions.</summary>
    private bool MayBeCopied(WiringTask task, WiringTask[] part) =>
        task.Block is null
        && tables.FeedsBystanders[task.Sender]
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
    public WiringTask[] Apart(WiringTask[] part) =>
        [.. part.SelectMany(task => task.Block is null && tables.FeedsBystanders[task.Sender] ? task.Sinks.Select(sink => task.For(sink)) : [task])];
}
