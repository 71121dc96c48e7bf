using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;
using RoutingRules.Assignment.Search.Feeders;
using RoutingRules.Assignment.Search.InOrder;

namespace RoutingRules.Assignment.Strategies;

/// <summary>The default: in list order with bounds; where that proves nothing, improving, and in small parts trying everything that could be better.</summary>
internal sealed class PortfolioStrategy : AssignmentStrategy
{
    public const string Id = "exact";

    /// <summary>Parts whose choices multiply to more than two to this power are not searched exactly.</summary>
    private const double MaxExactBits = 72;

    public override string Name => Id;

    public override string Title => "The default: finds the best and proves it where its budget lets it";

    public override StrategyAnswer? Search(AssignmentPart part, CancellationToken cancellation)
    {
        var view = (SubProblemView)part;
        return Search(view.Problem, view.Evaluator, view.Inner, view.Budget, cancellation) is { } found ? view.Answer(found) : null;
    }

    /// <summary>The same for the engine itself; null when the firm demands cannot stand together.</summary>
    public static SearchResult? Search(AssignmentProblem problem, Evaluator evaluator, Part part, long budget, CancellationToken cancellation)
    {
        var start = evaluator.Work;
        var inOrder = new DemandOrderSearch(problem, evaluator, part, cancellation);
        var ordered = inOrder.Run(budget / 2);
        if (ordered is { IsProven: true })
        {
            return ordered;
        }

        var feeding = FeederProblem.Of(problem, part);
        var senders = feeding is null ? null : new FeederSearch(feeding, cancellation);
        ordered = senders is null ? ordered : Feed(senders, ordered);

        var bits = 0.0;
        foreach (var index in part.Active)
        {
            bits += Math.Log2(part.Choices[index].Length + (part.IsFirm[index] ? 0 : 1));
        }

        var isLarge = bits > MaxExactBits;
        if (!isLarge)
        {
            var small = new ExhaustiveSearch(problem, evaluator, part, cancellation);
            ordered = small.Run(ordered, evaluator.Work + (budget / 4));
            if (small.IsComplete)
            {
                return ordered;
            }
        }

        // A limit that is reached already fills up what is free and improves nothing.
        var found =
            isLarge && ordered is not null
                ? new GreedySearch(problem, evaluator, part, cancellation).Run(ordered, evaluator.Work)
                : Better(new GreedySearch(problem, evaluator, part, cancellation).Run(null, start + (budget / 2)), ordered, evaluator);
        var known = 0;
        if (found is not null)
        {
            var refilling = new Refilling(problem, evaluator, part, feeding, cancellation);
            found = refilling.Run(found, evaluator.Work + (isLarge ? budget * 3 / 2 : budget / 2), score => inOrder.Proven(score) == ObjectiveVector.Length);
            if (inOrder.Proven(found.Score) < refilling.PlacementNumbers)
            {
                found = refilling.Prove(found, evaluator.Work + (budget / 4));
                known = found.ProvenNumbers;
            }
        }

        if (found is not null && isLarge)
        {
            found = new GreedySearch(problem, evaluator, part, cancellation).Run(found, start + budget);
        }
        else if (found is null || !isLarge)
        {
            found = new ExhaustiveSearch(problem, evaluator, part, cancellation).Run(
                found,
                evaluator.Work + Math.Max(budget - (evaluator.Work - start), budget / 2)
            );
        }

        found = senders is null || found is null || found.IsProven || inOrder.Proven(found.Score) >= ObjectiveNumbers.Tiers ? found : Feed(senders, found);
        return found is null || found.IsProven ? found : found with { ProvenNumbers = Math.Max(known, inOrder.Proven(found.Score)) };

        // Devices for what not all can feed: the best way, tried in list order.
        SearchResult? Feed(FeederSearch senders, SearchResult? known)
        {
            if (known is not null && !senders.Learn(known.Choices) && senders.Work > 0)
            {
                return known;
            }

            var before = senders.Work;
            senders.Run(budget / 2);
            evaluator.Spend(senders.Work - before);
            inOrder.Limit([.. senders.Least.Zip(feeding!.Outside, (within, outside) => within + outside)]);
            var fed = new Part
            {
                Active = part.Active,
                Choices = feeding.Restrict(senders.Feeding),
                IsFirm = part.IsFirm,
            };
            var found = new DemandOrderSearch(problem, evaluator, fed, cancellation).Run(budget / 4);

            // What it proves holds with these devices only.
            return Better(found is null ? null : found with { ProvenNumbers = 0 }, known, evaluator);
        }
    }

    private static SearchResult? Better(SearchResult? found, SearchResult? other, Evaluator evaluator) =>
        found is null || (other is not null && other.Score.CompareTo(found.Score, evaluator.Order) < 0) ? other : found;
}
