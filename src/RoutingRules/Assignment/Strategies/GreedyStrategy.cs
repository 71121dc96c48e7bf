using RoutingRules.Assignment.Search;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Places demands one by one where the score suffers least and leaves it at that.</summary>
internal sealed class GreedyStrategy : AssignmentStrategy
{
    public override string Name => "greedy";

    public override string Title => "Quick: one demand after the other, proves nothing";

    public override StrategyAnswer? Search(AssignmentPart part, CancellationToken cancellation)
    {
        var view = (SubProblemView)part;
        return new GreedySearch(view.Problem, view.Evaluator, view.Inner, cancellation).Run(null, 0) is { } found ? view.Answer(found) : null;
    }
}
