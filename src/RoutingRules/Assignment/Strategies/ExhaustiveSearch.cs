using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Depth-first search over all choices of a part, cut off by bounds; proves the best when it ends within its budget.</summary>
/// <remarks>
/// The bound of a partial choice is its own score with undecided demands taken at their smallest number and no cost otherwise, and the cheapest
/// wiring in which outputs that may still be filled need not be silent. Later choices only add demands and claims, so it never exceeds the score
/// of any completion on the first level where they differ.
/// </remarks>
internal sealed class ExhaustiveSearch
{
    private const long WiringBudget = 50_000;

    private readonly AssignmentProblem problem;
    private readonly Evaluator evaluator;
    private readonly Part part;
    private readonly CancellationToken cancellation;
    private readonly int[] choices;
    private readonly int[] sequence;
    private readonly int[] openCount;
    private readonly bool[] open;
    private ChoiceScore? best;
    private int[]? bestChoices;
    private long workLimit;
    private bool ranOut;

    public ExhaustiveSearch(AssignmentProblem problem, Evaluator evaluator, Part part, CancellationToken cancellation)
    {
        this.problem = problem;
        this.evaluator = evaluator;
        this.part = part;
        this.cancellation = cancellation;
        choices = GreedySearch.NewChoices(problem);
        openCount = new int[problem.Show.Graph.PointCount];
        open = new bool[openCount.Length];
        sequence =
        [
            .. part
                .Active.OrderBy(index => part.IsFirm[index] ? 0 : 1)
                .ThenBy(index => problem.Demands[index].Tier)
                .ThenBy(index => part.Choices[index].Length),
        ];
    }

    /// <summary>Searches.</summary>
    /// <param name="start">A result to beat, or null.</param>
    /// <param name="limit">Evaluator work after which the search stops.</param>
    public SearchResult? Run(SearchResult? start, long limit)
    {
        best = start?.Score;
        bestChoices = start?.Choices;
        workLimit = limit;
        foreach (var index in part.Active)
        {
            Open(index, 1);
        }

        Search(0);
        return best is null
            ? null
            : new SearchResult
            {
                Choices = bestChoices!,
                Score = best,
                ProvenNumbers = ranOut ? 0 : ObjectiveVector.Length,
            };
    }

    /// <summary>True when the search ended without its budget running out.</summary>
    public bool IsComplete => !ranOut;

    private void Search(int depth)
    {
        if (evaluator.Work >= workLimit || cancellation.IsCancellationRequested)
        {
            ranOut = true;
            return;
        }

        var score = evaluator.Evaluate(part.Active, choices, depth == sequence.Length ? null : open, WiringBudget, best, out var isBestWiring);
        if (!isBestWiring)
        {
            // The bound would no longer be one: the wiring found may be dearer than the cheapest, or there may be one where none was found.
            ranOut = true;
        }

        if (score is null || (best is not null && score.CompareTo(best, evaluator.Order) >= 0))
        {
            return;
        }

        if (depth == sequence.Length)
        {
            best = score;
            bestChoices = [.. choices];
            return;
        }

        var index = sequence[depth];
        Open(index, -1);
        foreach (var choice in part.Choices[index])
        {
            choices[index] = choice;
            Search(depth + 1);
        }

        if (!part.IsFirm[index])
        {
            choices[index] = Evaluator.Unplaced;
            Search(depth + 1);
        }

        choices[index] = Evaluator.Undecided;
        Open(index, 1);
    }

    private void Open(int index, int change)
    {
        foreach (var choice in part.Choices[index])
        {
            foreach (var point in problem.Demands[index].Candidates[choice].Claims)
            {
                openCount[point] += change;
                open[point] = openCount[point] > 0;
            }
        }
    }
}
