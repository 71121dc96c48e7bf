namespace RoutingRules.Assignment;

/// <summary>Improves a result by placing a few demands anew at a time, in list order or in any, from small neighbourhoods to large ones.</summary>
/// <remarks>Deterministic: the neighbourhoods follow from the result alone, and work is counted, not timed.</remarks>
internal sealed class Refilling(AssignmentProblem problem, Evaluator evaluator, Part part, CancellationToken cancellation)
{
    private const long WiringBudget = 200;

    /// <summary>For each round: demands placed anew at a time in any order and in list order, partial placements to look at, states to keep.</summary>
    private static readonly (int Few, int Many, int Nodes, int States)[] Rounds = [(5, 12, 300, 40), (7, 24, 2_000, 120), (9, 40, 10_000, 400)];

    private readonly PlacementSearch search = new(problem, evaluator, part, new PlacementTally(problem, evaluator.Order), cancellation);
    private readonly ListRefill listRefill = new(problem, evaluator, part, cancellation);
    private long limit;
    private Func<ChoiceScore, bool> isDone = _ => false;

    /// <summary>Improves.</summary>
    /// <param name="start">Where to begin.</param>
    /// <param name="workLimit">Evaluator work after which it stops.</param>
    /// <param name="isBest">Says that nothing better than a score exists.</param>
    public SearchResult Run(SearchResult start, long workLimit, Func<ChoiceScore, bool> isBest)
    {
        limit = workLimit;
        isDone = isBest;
        search.Start(start);
        foreach (var round in Rounds)
        {
            while (Improve(round))
            {
            }
        }

        return start with { Choices = search.BestChoices, Score = search.Best! };
    }

    private bool IsOver => evaluator.Work >= limit || cancellation.IsCancellationRequested;

    private bool Improve((int Few, int Many, int Nodes, int States) round)
    {
        var improved = false;
        var neighbourhoods = new Neighbourhoods(problem, part);
        foreach (var (demands, isWiring) in neighbourhoods.All(() => search.BestChoices, round.Few, round.Many))
        {
            if (IsOver || isDone(search.Best!))
            {
                return false;
            }

            improved |= demands.Length > round.Few ? InOrder(demands, round.States) : InAnyOrder(demands, round.Nodes, isWiring);
        }

        return improved;
    }

    private bool InAnyOrder(int[] demands, int nodes, bool isWiring) => search.Run(demands, new SearchEffort
    {
        Nodes = nodes,
        Leaves = 30,
        Width = isWiring ? 6 : int.MaxValue,
        Levels = isWiring ? search.PlacementLevels : PlacementTally.KeyLength,
        TriesEqual = isWiring,
        WiringBudget = WiringBudget,
        WorkLimit = limit,
    });

    private bool InOrder(int[] demands, int states)
    {
        if (listRefill.Run(demands, search.BestChoices, states) is not { } choices || choices.AsSpan().SequenceEqual(search.BestChoices))
        {
            return false;
        }

        var score = evaluator.Evaluate(part.Active, choices, null, WiringBudget, search.Best, out _);
        if (score is null || score.CompareTo(search.Best!, evaluator.Order) >= 0)
        {
            return false;
        }

        search.Take(choices, score);
        return true;
    }
}
