using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Finds the cheapest wiring for a set of deliveries, or that there is none.</summary>
/// <remarks>
/// Tasks that cannot influence each other are solved one after the other; inside such a part a depth-first search tries cheap options first
/// and stops at its budget with the best wiring found. Not thread safe.
/// </remarks>
internal sealed class WiringSolver
{
    private const int MaxSolved = 200_000;

    private readonly AssignmentProblem problem;
    private readonly WiringState state;
    private readonly WiringTables tables;
    private readonly WiringSinks sinks;
    private readonly WiringRelevance relevance;
    private readonly WiringParts parts;
    private readonly ChoiceApplier applier;
    private readonly RankedOptions ranked;
    private readonly PartSearch search;
    private readonly Dictionary<WiringKey, WiringSolution> solved = [];
    private Func<WiringPlan, bool>? accept;
    private long known;

    public WiringSolver(AssignmentProblem problem)
    {
        this.problem = problem;
        ObjectiveLevel[] order =
        [
            .. LevelOrder
                .Of(problem.Options)
                .Where(level => level is ObjectiveLevel.Rewritten or ObjectiveLevel.TransmitBlocks or ObjectiveLevel.ReceiveBlocks),
        ];
        state = new WiringState(problem);
        tables = new WiringTables(problem);
        sinks = new WiringSinks(problem, state);
        relevance = new WiringRelevance(problem, state, tables);
        parts = new WiringParts(problem, tables, relevance);
        applier = new ChoiceApplier(problem, state, tables, sinks);
        var slots = new WiringSlots(problem, state, relevance);
        ranked = new RankedOptions(new WiringOptions(problem, state, tables, relevance, slots), applier, state, order);
        search = new PartSearch(problem, state, tables, sinks, slots, applier, ranked, order);
    }

    /// <summary>Options tried since the solver was made.</summary>
    public long Work => ranked.Work + known;

    /// <summary>True when the last search ended for its budget: then what it did not find may exist, and what it found may not be the cheapest.</summary>
    public bool RanOut { get; private set; }

    /// <summary>Finds the cheapest wiring.</summary>
    /// <param name="demands">What has to arrive; deliveries inside one device may be among them and cost nothing.</param>
    /// <param name="mayFill">Outputs that demands still to be placed may take, so that they need not be silent yet; null for none.</param>
    /// <param name="budget">Options to try at most in each part; 0 for the first wiring.</param>
    /// <param name="accept">Says whether a wiring may be used at all; null when every one may. All deliveries are then wired as one part.</param>
    public WiringPlan? Solve(IReadOnlyList<WiringDemand> demands, bool[]? mayFill, long budget, Func<WiringPlan, bool>? accept = null)
    {
        this.accept = accept;
        var wiring = With(demands, mayFill, all => SolveParts(all, budget));
        this.accept = null;
        return wiring;
    }

    /// <summary>The cost of the cheapest wiring, without the wiring; null when there is none.</summary>
    /// <param name="demands">As for <see cref="Solve"/>.</param>
    /// <param name="mayFill">As for <see cref="Solve"/>.</param>
    /// <param name="budget">As for <see cref="Solve"/>.</param>
    /// <param name="isBest">True when no cheaper wiring exists, or surely none at all.</param>
    public WiringCost? Price(IReadOnlyList<WiringDemand> demands, bool[]? mayFill, long budget, out bool isBest)
    {
        var best = true;
        var cost = With(
            demands,
            mayFill,
            all =>
            {
                var total = state.Cost;
                foreach (var part in parts.Of(all))
                {
                    var solution = SolvePart(part, budget);
                    best &= solution.IsBest;
                    if (solution.Choices is null)
                    {
                        return (WiringCost?)null;
                    }

                    total += solution.Cost;
                }

                return total;
            }
        );
        isBest = best;
        return cost;
    }

    private TResult? With<TResult>(IReadOnlyList<WiringDemand> demands, bool[]? mayFill, Func<List<WiringTask>, TResult?> solve)
    {
        RanOut = false;
        sinks.Place(demands, mayFill);
        var mark = state.Mark;
        var result = default(TResult);
        if (sinks.FillSlots(demands) && sinks.KeptComeAlongSilent() && new WiringTasks(problem, tables.FeedsBystanders).Build(demands) is { } all)
        {
            sinks.CountSettled(demands);
            relevance.Find(all);
            result = solve(all);
        }

        state.Undo(mark);
        sinks.Clear();
        return result;
    }

    private WiringPlan? SolveParts(List<WiringTask> all, long budget)
    {
        var isBest = true;
        var wired = new List<WiringTask>(all.Count);
        foreach (
            var part in accept is null
                ? parts.Of(all)
                :
                [
                    [.. all],
                ]
        )
        {
            var solution = SolvePart(part, budget);
            if (solution.Choices is null)
            {
                return null;
            }

            isBest &= solution.IsBest;
            var chosen = solution.IsApart ? search.Apart(part) : part;
            if (!ApplyAll(chosen, solution.Choices))
            {
                // Another part took a receive block of equal worth: choose again beside it.
                solution = SearchPart(part, budget);
                chosen = solution.IsApart ? search.Apart(part) : part;
                if (solution.Choices is null || !ApplyAll(chosen, solution.Choices))
                {
                    return null;
                }
            }

            wired.AddRange(chosen);

            if (tables.HasBystanders)
            {
                state.AddBystanders(part);
            }
        }

        return new WiringReader(problem, state).Read(wired, isBest);
    }

    private WiringSolution SolvePart(WiringTask[] part, long budget)
    {
        var isCached = sinks.MayFill is null && accept is null && !tables.MixesRouting && !sinks.FillsSlots;
        var key = isCached
            ? new WiringKey(part, relevance.IsTasked, tables.ReceiveBlocksOf, tables.FeedsBystanders, problem.FixedOutputsOf, sinks.SourceAt, budget)
            : default;
        if (isCached && solved.TryGetValue(key, out var found))
        {
            known++;
            return found;
        }

        var solution = SearchPart(part, budget);
        if (isCached)
        {
            if (solved.Count >= MaxSolved)
            {
                solved.Clear();
            }

            solved.Add(key, solution);
        }

        return solution;
    }

    private WiringSolution SearchPart(WiringTask[] part, long budget)
    {
        var solution = search.Run(part, budget, accept, out var isCut);
        RanOut |= isCut;
        return solution;
    }

    private bool ApplyAll(WiringTask[] part, Choice[] choices)
    {
        var mark = state.Mark;
        for (var i = 0; i < part.Length; i++)
        {
            var choice = choices[i];
            if (!applier.Apply(part[i], choice))
            {
                state.Undo(mark);
                return false;
            }

            part[i].Served = choice.ReceiveSlots;
        }

        return true;
    }
}
