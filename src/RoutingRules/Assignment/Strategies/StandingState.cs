using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Assignment.Strategies;

/// <summary>The input as it stands, as a result of a search: whatever is found has to be better, or all stays as it is.</summary>
internal static class StandingState
{
    private const long WiringBudget = 5_000;

    /// <summary>What stands of a part and is still allowed, scored; null when a firm demand does not stand, or all of it cannot stay together.</summary>
    public static SearchResult? Of(AssignmentProblem problem, Evaluator evaluator, Part part)
    {
        var choices = GreedySearch.NewChoices(problem);
        foreach (var index in part.Active)
        {
            choices[index] = Standing(problem, problem.Demands[index], part.Choices[index]);
            if (choices[index] < 0 && part.IsFirm[index])
            {
                return null;
            }
        }

        return evaluator.Evaluate(part.Active, choices, null, WiringBudget, null, out _) is { } score
            ? new SearchResult
            {
                Choices = choices,
                Score = score,
                ProvenNumbers = 0,
            }
            : null;
    }

    /// <summary>The candidate that makes exactly deliveries that are made already, most of them first; nothing when there is none.</summary>
    private static int Standing(AssignmentProblem problem, Demand demand, int[] choices)
    {
        var best = Evaluator.Unplaced;
        foreach (var choice in choices)
        {
            var candidate = demand.Candidates[choice];
            if (
                candidate.IsExisting
                && (best < 0 || candidate.Failed < demand.Candidates[best].Failed)
                && Array.TrueForAll(
                    candidate.Deliveries,
                    delivery => ExistingPlacements.Carries(problem.Show.Graph, new(delivery.Sink), new(delivery.Source), delivery.Width)
                )
            )
            {
                best = choice;
            }
        }

        return best;
    }
}
