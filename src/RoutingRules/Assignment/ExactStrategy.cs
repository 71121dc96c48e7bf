namespace RoutingRules.Assignment;

/// <summary>The default: placing one by one and improving, then, where the part is small enough, trying everything that could be better.</summary>
internal sealed class ExactStrategy : AssignmentStrategy
{
    public const string Id = "exact";

    /// <summary>Parts whose choices multiply to more than two to this power are not searched exactly.</summary>
    private const double MaxExactBits = 72;

    public override string Name => Id;

    public override string Title => "The default: finds the best and proves it where its budget lets it";

    public override StrategyAnswer? Search(AssignmentPart part, CancellationToken cancellation)
    {
        var view = (PartView)part;
        return Search(view.Problem, view.Evaluator, view.Inner, view.Budget, cancellation) is { } found ? view.Answer(found) : null;
    }

    /// <summary>The same for the engine itself; null when the firm demands cannot stand together.</summary>
    public static SearchResult? Search(AssignmentProblem problem, Evaluator evaluator, Part part, long budget, CancellationToken cancellation)
    {
        var start = evaluator.Work;
        var greedy = new GreedySearch(problem, evaluator, part, cancellation).Run(start + (budget / 2));
        var bits = 0.0;
        foreach (var index in part.Active)
        {
            bits += Math.Log2(part.Choices[index].Length + (part.IsFirm[index] ? 0 : 1));
        }

        return bits > MaxExactBits && greedy is not null
            ? greedy
            : new ExactSearch(problem, evaluator, part, cancellation).Run(greedy, evaluator.Work + Math.Max(budget - (evaluator.Work - start), budget / 2));
    }
}
