using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Lets a strategy search a part and takes its proposal only when it stands.</summary>
internal sealed class StrategySearch(AssignmentProblem problem, Evaluator evaluator, AssignmentStrategy strategy, CancellationToken cancellation)
{
    private const long WiringBudget = 50_000;

    /// <summary>Searches.</summary>
    /// <returns>The proposal, scored; null when the firm demands cannot stand together, which only the engine's own search decides.</returns>
    /// <exception cref="InvalidProposalException">The proposal breaks a rule.</exception>
    public SearchResult? Run(Part part, long budget)
    {
        var view = new SubProblemView(problem, evaluator, part, budget);
        if (strategy.Search(view, cancellation) is { } answer)
        {
            return Judge(view, answer);
        }

        return strategy is PortfolioStrategy || PortfolioStrategy.Search(problem, evaluator, part, budget, cancellation) is not { } found
            ? null
            : new SearchResult
            {
                Choices = found.Choices,
                Score = found.Score,
                ProvenNumbers = 0,
            };
    }

    private SearchResult Judge(SubProblemView view, StrategyAnswer answer)
    {
        if (view.Known(answer) is { } known)
        {
            return known;
        }

        if (Fault(view.Inner, answer) is { } fault)
        {
            throw new InvalidProposalException(strategy.Name, fault);
        }

        var choices = view.ToChoices(answer.Choices);
        var score =
            evaluator.Evaluate(view.Inner.Active, choices, null, WiringBudget, null, out _)
            ?? throw new InvalidProposalException(
                strategy.Name,
                "Its choices cannot stand together: they share a point, break a limit, a spare or a separation, or no streams can bring what they need."
            );
        // Strategies are not shown blocks that sources fill only in part.
        return new SearchResult
        {
            Choices = choices,
            Score = score,
            ProvenNumbers = problem.Blocks.LeavesSlotsEmpty ? 0 : answer.ProvenNumbers,
        };
    }

    private string? Fault(Part part, StrategyAnswer answer)
    {
        if (answer.Choices.Count != part.Active.Length)
        {
            return $"It has {answer.Choices.Count} choices for {part.Active.Length} demands.";
        }

        for (var i = 0; i < part.Active.Length; i++)
        {
            var index = part.Active[i];
            var key = problem.Demands[index].Node.Key;
            if (answer.Choices[i] < StrategyAnswer.LeftOut || answer.Choices[i] >= part.Choices[index].Length)
            {
                return $"For {key} it chose {answer.Choices[i]} of {part.Choices[index].Length} candidates.";
            }

            if (answer.Choices[i] == StrategyAnswer.LeftOut && part.IsFirm[index])
            {
                return $"It left out {key}, which is pinned or held.";
            }
        }

        return answer.ProvenNumbers is < 0 or > ObjectiveVector.Length ? $"It proved {answer.ProvenNumbers} of {ObjectiveVector.Length} numbers." : null;
    }
}
