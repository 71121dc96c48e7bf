using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Result;
using RoutingRules.Assignment.Search;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Judges single moves of one demand while everything else stays as an assignment has it.</summary>
internal sealed class AlternativeProbe
{
    private const long WiringBudget = 5_000;

    private readonly AssignmentProblem problem;
    private readonly Evaluator evaluator;
    private readonly int[] active;
    private readonly int[] choices;
    private readonly List<(RefusalCause Cause, Evaluator Evaluator)> relaxed;
    private readonly ResolvedShow result;

    /// <param name="show">The show that was assigned.</param>
    /// <param name="options">How it was assigned.</param>
    /// <param name="result">What that gave.</param>
    /// <param name="patched">The show that came out.</param>
    public AlternativeProbe(ResolvedShow show, AssignmentOptions options, AssignmentResult result, ResolvedShow patched)
    {
        this.result = patched;
        problem = ProblemBuilder.Build(show, options);
        evaluator = new Evaluator(problem);
        active = [.. Enumerable.Range(0, problem.Demands.Length)];
        choices = [.. problem.Demands.Select(demand => ChoiceOf(demand, result))];
        relaxed =
        [
            (RefusalCause.Spare, new Evaluator(ProblemBuilder.Build(show, options with { Spares = 0 }))),
            (RefusalCause.Separation, Apart(show, options)),
            (RefusalCause.StreamLimit, Unlimited(show, options)),
            (RefusalCause.LinkFull, new Evaluator(problem.WithoutLinkRoom())),
        ];
        Score = Evaluate(evaluator, choices);
    }

    public AssignmentProblem Problem => problem;

    /// <summary>The assignment as it stands; null when it could not be laid out again.</summary>
    public ObjectiveVector? Score { get; }

    /// <summary>First points where each demand stands; -1 for none.</summary>
    public int At(int demand) => choices[demand] < 0 ? -1 : problem.Demands[demand].Candidates[choices[demand]].First;

    /// <summary>Demands other than one that stand on a run, each once, in point order.</summary>
    public List<int> Occupants(int except, int first, int width)
    {
        var found = new List<int>();
        for (var point = first; point < first + width; point++)
        {
            foreach (var index in active)
            {
                if (
                    index != except
                    && choices[index] >= 0
                    && !found.Contains(index)
                    && problem.Demands[index].Candidates[choices[index]].Claims.Contains(point)
                )
                {
                    found.Add(index);
                }
            }
        }

        return found;
    }

    /// <summary>
    /// What speaks against a run that nobody else has, or how good the whole would be with it. Where the work for one place ended before it was known,
    /// the run counts as not looked at.
    /// </summary>
    public (RefusalCause Cause, ObjectiveVector? Objective) Judge(Demand demand, int first)
    {
        var isKnown = true;
        var moved = (int[])choices.Clone();
        var candidates = Enumerable.Range(0, demand.Candidates.Length).Where(choice => demand.Candidates[choice].First == first).ToList();
        if (candidates.Count == 0)
        {
            return (
                demand.Late.Contains(first) ? RefusalCause.Late
                : Exposure.IsPrivate(demand.Node) && problem.Exposure.Leads(first) ? RefusalCause.Overheard
                : RefusalCause.NoPath,
                null
            );
        }

        foreach (var choice in candidates)
        {
            moved[demand.Index] = choice;
            if (evaluator.Evaluate(active, moved, null, WiringBudget, null, out var isSettled) is { } score)
            {
                var objective = Vector(score);
                return isSettled || IsDecidedByPlaces(objective) ? (RefusalCause.Worse, objective) : (RefusalCause.NotLookedAt, null);
            }

            isKnown &= isSettled;
        }

        if (!isKnown)
        {
            return (RefusalCause.NotLookedAt, null);
        }

        moved[demand.Index] = candidates[0];
        foreach (var (cause, without) in relaxed)
        {
            if (Evaluate(without, moved) is not null)
            {
                return (cause, null);
            }
        }

        return (RefusalCause.BlockClash, null);
    }

    /// <summary>The directions of links that keep a demand from a run.</summary>
    public ValueList<LinkUse> FullLinks(Demand demand, int first) =>
        LinkTable.FullOn(problem, result, demand.Candidates.First(candidate => candidate.First == first));

    private ObjectiveVector? Evaluate(Evaluator with, int[] some) =>
        with.Evaluate(active, some, null, WiringBudget, null, out _) is { } score ? Vector(score) : null;

    private static ObjectiveVector Vector(ChoiceScore score) => new() { Values = ValueList.Create<int>(score.Numbers) };

    /// <summary>What is worse is so whatever blocks are used: an unsettled wiring may only count too many of those.</summary>
    private bool IsDecidedByPlaces(ObjectiveVector objective) =>
        Score is { } now
        && ObjectiveDifference.Between(now, objective, problem.Options.Order) is { By: > 0 } difference
        && difference.Number - ObjectiveNumbers.Levels is var level
        && (level < 0 || (ObjectiveLevel)level is not (ObjectiveLevel.Rewritten or ObjectiveLevel.TransmitBlocks or ObjectiveLevel.ReceiveBlocks));

    private static Evaluator Apart(ResolvedShow show, AssignmentOptions options)
    {
        var without = ProblemBuilder.Build(show, options);
        foreach (var demand in without.Demands)
        {
            demand.Separations.Clear();
        }

        return new Evaluator(without);
    }

    private static Evaluator Unlimited(ResolvedShow show, AssignmentOptions options)
    {
        var without = ProblemBuilder.Build(show, options);
        without.SentLimit.AsSpan().Fill(int.MaxValue);
        without.ReceivedLimit.AsSpan().Fill(int.MaxValue);
        return new Evaluator(without);
    }

    private int ChoiceOf(Demand demand, AssignmentResult result)
    {
        var place = result.Placements.FirstOrDefault(placement => placement.Demand == demand.Node.Key);
        if (place is null || problem.Show.Graph.Find(place.At, out var first) != ConnectionState.Connected)
        {
            return Evaluator.Unplaced;
        }

        var missing = result.Unplaced.Where(entry => entry.Demand == demand.Node.Key && entry.Sink is not null).Select(entry => entry.Sink!.Value).ToList();
        return Array.FindIndex(
            demand.Candidates,
            candidate =>
                candidate.First == first.Value
                && candidate.Failed == missing.Count
                && candidate.Deliveries.All(delivery =>
                    demand.Node.Line is null || !missing.Contains(problem.Show.Graph.Address(new PointIndex(delivery.Sink), demand.Node.Width))
                )
        );
    }
}
