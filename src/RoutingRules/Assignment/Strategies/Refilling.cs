using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;
using RoutingRules.Assignment.Search.Feeders;
using RoutingRules.Assignment.Search.InOrder;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Improves a result by placing a few demands anew at a time, in list order or in any, from small neighbourhoods to large ones.</summary>
/// <remarks>Deterministic: the neighbourhoods follow from the result alone, and work is counted, not timed.</remarks>
internal sealed class Refilling(AssignmentProblem problem, Evaluator evaluator, Part part, FeederProblem? feeding, CancellationToken cancellation)
{
    private const long WiringBudget = 200;
    private const long ProofWiringBudget = 20_000;

    /// <summary>One in so many units of work is kept for what has no place after the rounds.</summary>
    private const int ShareOfWaiting = 16;

    /// <summary>For each round: demands placed anew at a time in any order and in list order, partial placements to look at, states to keep.</summary>
    private static readonly (int Few, int Many, int Nodes, int States)[] Rounds = [(5, 12, 300, 40), (7, 24, 2_000, 120), (9, 40, 10_000, 400)];

    private readonly PlacementSearch search = new(problem, evaluator, part, new PlacementTally(problem, evaluator.Order), cancellation);
    private readonly Neighbourhoods neighbourhoods = new(problem, part, feeding);
    private readonly OrderRefill listRefill = new(problem, evaluator, part, cancellation);
    private long limit;
    private Func<ChoiceScore, bool> isDone = _ => false;

    /// <summary>Improves.</summary>
    /// <param name="start">Where to begin.</param>
    /// <param name="workLimit">Evaluator work after which it stops.</param>
    /// <param name="isBest">Says that nothing better than a score exists.</param>
    public SearchResult Run(SearchResult start, long workLimit, Func<ChoiceScore, bool> isBest)
    {
        var share = Array.Exists(part.Active, index => start.Choices[index] == Evaluator.Unplaced) ? (workLimit - evaluator.Work) / ShareOfWaiting : 0;
        limit = workLimit - share;
        isDone = isBest;
        search.Start(start);
        foreach (var round in Rounds)
        {
            while (Improve(round)) { }
        }

        // The rounds mostly use up all they have, and what they changed may let somebody in.
        limit = evaluator.Work + share;
        while (FeedOthers(Rounds[^1])) { }

        return start with
        {
            Choices = search.BestChoices,
            Score = search.Best!,
            ProvenNumbers = 0,
        };
    }

    /// <summary>Tries all places of everything, as far as they could be better on what places alone decide; call after <see cref="Run"/>.</summary>
    /// <param name="found">What <see cref="Run"/> found.</param>
    /// <param name="workLimit">Evaluator work after which it stops.</param>
    /// <returns>The best result, with those numbers proven when the search ended in time.</returns>
    public SearchResult Prove(SearchResult found, long workLimit)
    {
        var movable = Array.FindAll(part.Active, index => part.Choices[index].Length > (part.IsFirm[index] ? 1 : 0));

        // Whether streams can keep off each other's links is not searched to the end, so that a refusal proves nothing.
        if (
            movable.Length > PlacementTally.MostMarked
            || Array.Exists(part.Active, index => problem.Demands[index].Separations.Exists(separate => separate.By == Model.SeparationBy.Link))
        )
        {
            return found;
        }

        search.Run(
            movable,
            new SearchEffort
            {
                Nodes = int.MaxValue,
                Leaves = int.MaxValue,
                Width = int.MaxValue,
                Levels = search.PlacementLevels,
                TriesEqual = false,
                WiringBudget = ProofWiringBudget,
                WorkLimit = workLimit,
            }
        );

        // A key has one entry more than the numbers: who fails.
        return found with
        {
            Choices = search.BestChoices,
            Score = search.Best!,
            ProvenNumbers = search.IsComplete ? PlacementNumbers : 0,
        };
    }

    /// <summary>Numbers that places alone decide, before the first one that the wiring decides.</summary>
    public int PlacementNumbers => search.PlacementLevels - 1;

    private bool IsOver => evaluator.Work >= limit || cancellation.IsCancellationRequested;

    private bool Improve((int Few, int Many, int Nodes, int States) round)
    {
        var improved = FeedOthers(round);
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

    /// <summary>Lets another device feed a unit where that lets more in.</summary>
    private bool FeedOthers((int Few, int Many, int Nodes, int States) round)
    {
        var improved = false;
        foreach (var demands in neighbourhoods.FedByAnother(() => search.BestChoices, round.Many))
        {
            improved |= !IsOver && !isDone(search.Best!) && InAnyOrder(demands, round.Nodes, isWiring: false);
        }

        return improved;
    }

    private bool InAnyOrder(int[] demands, int nodes, bool isWiring) =>
        search.Run(
            demands,
            new SearchEffort
            {
                Nodes = nodes,
                Leaves = 30,
                Width = isWiring ? 6 : int.MaxValue,
                Levels = isWiring ? search.PlacementLevels : PlacementTally.KeyLength,
                TriesEqual = isWiring,
                WiringBudget = WiringBudget,
                WorkLimit = limit,
            }
        );

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
