using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Result;
using RoutingRules.Model;
using RoutingRules.Verification;

namespace RoutingRules.Assignment;

/// <summary>Assigns what came out once more where something is left out and nobody proved that it must be: the search starts from other routes then.</summary>
internal static class SecondLook
{
    private const int Most = 3;

    /// <summary>The best of a result and what it turns into when it is assigned again, told as one assignment of the input.</summary>
    public static AssignmentResult At(ShowAssigner assigner, Show show, AssignmentOptions options, AssignmentResult first, CancellationToken cancellation)
    {
        if (!IsOpen(first))
        {
            return first;
        }

        var facts = new AssignmentFacts(show, options, id => assigner.Checker.Profiles.Find(id)?.Value);
        var best = first;
        for (var round = 0; round < Most && IsOpen(best) && !cancellation.IsCancellationRequested; round++)
        {
            var again = assigner.Assign(best.Show, options, cancellation);
            if (
                !again.Contradictions.Equals(best.Contradictions)
                || !LeavesOutLess(again, best, facts)
                || Told(assigner, show, best, again, facts) is not { } told
            )
            {
                break;
            }

            best = told;
        }

        return best;
    }

    private static bool IsOpen(AssignmentResult result) =>
        result.Status is AssignmentStatus.Feasible or AssignmentStatus.PinsContradict
        && result.ProvenNumbers < ObjectiveNumbers.Tiers
        && result.Unplaced.Count > result.Contradictions.SelectMany(set => set).Distinct().Count();

    private static bool LeavesOutLess(AssignmentResult one, AssignmentResult other, AssignmentFacts facts)
    {
        var priorities = facts.Demands.ToDictionary(demand => demand.Key, demand => demand.Priority);
        return Enum.GetValues<Priority>().Select(tier => Count(other, tier) - Count(one, tier)).FirstOrDefault(difference => difference != 0) > 0;

        int Count(AssignmentResult result, Priority tier) => result.Unplaced.Count(entry => priorities[entry.Demand] == tier);
    }

    /// <summary>A second result as one of the input; null when it would break a rule there.</summary>
    private static AssignmentResult? Told(ShowAssigner assigner, Show show, AssignmentResult first, AssignmentResult again, AssignmentFacts facts)
    {
        var standing = facts.Demands.ToDictionary(demand => demand.Key, demand => demand.Existing);
        var placed = again.Placements.Select(placement => placement with { IsKept = standing[placement.Demand] == placement.At }).ToValueList();
        var at = placed.ToDictionary(placement => placement.Demand, placement => (PointRange?)placement.At);
        var left = again.Show.Patch.Streams.Select(stream => stream.Id).ToHashSet();
        var before = assigner.Resolve(show);
        var changes = new ResultChanges(before, assigner.Resolve(again.Show).Graph);
        var contradiction = again.Contradictions.SelectMany(set => set).Distinct().ToValueList();
        var counted = AssignmentVerifier.Verify(facts, again.Show, placed, again.Unplaced, contradiction);
        return !counted.IsValid
            ? null
            : again with
            {
                Status = first.Status,
                ProvenNumbers = first.ProvenNumbers,
                Objective = counted.Vector,
                Placements = placed,
                Moved = facts
                    .Demands.Where(demand => demand.Existing is not null && at.GetValueOrDefault(demand.Key) != demand.Existing)
                    .Select(demand => demand.Key)
                    .ToValueList(),
                RemovedStreams = show.Patch.Streams.Select(stream => stream.Id).Where(id => !left.Contains(id)).Distinct().ToValueList(),
                RemovedReceivers = changes.RemovedReceivers(),
                Silenced = changes.Silenced(),
                Cleared = changes.Cleared(first.Cleared.Concat(again.Cleared).Select(before.Graph.Find).Order()),
                Notes = first.Notes.Concat(again.Notes).Distinct().ToValueList(),
            };
    }
}
