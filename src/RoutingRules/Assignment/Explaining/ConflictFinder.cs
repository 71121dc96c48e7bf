using RoutingRules.Assignment.Problem;
using RoutingRules.Model;
using RoutingRules.Signal;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Finds demands that cannot all be placed with an unplaced one, none of them too many, by assigning only some of the demands.</summary>
internal sealed class ConflictFinder(Reassigner again, AssignmentProblem problem, AssignmentResult result)
{
    /// <summary>Each attempt gets this much search work at most; an attempt that needs more proves nothing.</summary>
    private const long AttemptBudget = 50_000;

    private readonly int[] placedAt = PlacedAt(problem, result);

    /// <summary>The entry of the account with its conflict, as far as it can be settled.</summary>
    public UnplacedDemand Explain(UnplacedDemand unplaced)
    {
        if (result.Contradictions.FirstOrDefault(set => set.Contains(unplaced.Demand)) is { IsEmpty: false } contradiction)
        {
            return unplaced with { Conflict = contradiction.Where(key => key != unplaced.Demand).ToValueList(), ConflictProof = ConflictProof.Searched };
        }

        if (problem.Untried.Count > 0)
        {
            return unplaced;
        }

        var demand = problem.Demands.First(candidate => candidate.Node.Key == unplaced.Demand);
        if (demand.Candidates.Length == 0)
        {
            return unplaced with { ConflictProof = ConflictProof.Counted };
        }

        var hall = unplaced.Sink is null ? OversubscribedPoints.Find(problem, placedAt, demand.Index) : null;
        var start = hall is null ? Grow(unplaced, demand) : [.. hall.Others];
        if (start is null || Shrink(unplaced, start, hall is not null) is not { } conflict)
        {
            return unplaced;
        }

        var isCounted = hall is not null && conflict.Count == hall.Others.Length;
        return unplaced with
        {
            Conflict = conflict.Select(KeyOf).ToValueList(),
            ConflictProof = isCounted ? ConflictProof.Counted : ConflictProof.Searched,
            ConflictPoints = isCounted ? PointRuns.Of(problem.Show.Graph, hall!.Points) : [],
        };
    }

    /// <summary>For each demand the first point of its place; -1 when it has none.</summary>
    public static int[] PlacedAt(AssignmentProblem problem, AssignmentResult result)
    {
        var at = new int[problem.Demands.Length];
        Array.Fill(at, -1);
        var places = result.Placements.ToDictionary(placement => placement.Demand, StringComparer.Ordinal);
        foreach (var demand in problem.Demands)
        {
            if (places.TryGetValue(demand.Node.Key, out var place) && problem.Show.Graph.Find(place.At, out var first) == Resolving.ConnectionState.Connected)
            {
                at[demand.Index] = first.Value;
            }
        }

        return at;
    }

    private string KeyOf(int index) => problem.Demands[index].Node.Key;

    /// <summary>The nearest demands, as few as are found to leave no place; null when it cannot be told.</summary>
    private List<int>? Grow(UnplacedDemand unplaced, Demand demand)
    {
        var near = Nearest(demand);
        for (var count = 0; ; count = count < 4 ? count + 1 : count + (count / 2))
        {
            var some = near.Take(count).ToList();
            switch (AreAllPlaced(unplaced, some))
            {
                case false:
                    return some;
                case null:
                    return null;
                default:
                    if (count >= near.Count)
                    {
                        return null;
                    }

                    break;
            }
        }
    }

    /// <summary>Placed demands: those that hold its points first, then those on the same devices, then the rest; each in demand order.</summary>
    private List<int> Nearest(Demand demand)
    {
        var points = new HashSet<int>(demand.Candidates.SelectMany(candidate => candidate.Claims));
        var devices = new HashSet<int>(
            demand.Candidates.SelectMany(candidate => candidate.Deliveries).SelectMany(delivery => new[] { delivery.Sender, delivery.Receiver })
        );
        return
        [
            .. Enumerable
                .Range(0, placedAt.Length)
                .Where(index => index != demand.Index && placedAt[index] >= 0)
                .OrderBy(index =>
                    Enumerable.Range(placedAt[index], problem.Demands[index].Node.Width).Any(points.Contains) ? 0
                    : devices.Contains(problem.Show.Graph.DeviceOf(new(placedAt[index])).Index) ? 1
                    : 2
                ),
        ];
    }

    /// <summary>
    /// Leaves out what is not needed until leaving out any one more gives a place to all; null when that cannot be told. One round is not enough:
    /// without the others, a demand that seemed dispensable may be what makes a block's contents welcome.
    /// </summary>
    private List<int>? Shrink(UnplacedDemand unplaced, List<int> conflict, bool isCounted)
    {
        conflict.Sort();
        if (!isCounted && AreAllPlaced(unplaced, conflict) != false)
        {
            return null;
        }

        for (var isDone = false; !isDone; )
        {
            isDone = true;
            foreach (var index in Enumerable.Reverse(conflict).ToList())
            {
                var smaller = conflict.Where(other => other != index).ToList();
                switch (AreAllPlaced(unplaced, smaller))
                {
                    case null:
                        return null;
                    case false:
                        conflict = smaller;
                        isDone = false;
                        break;
                }
            }
        }

        return conflict;
    }

    /// <summary>Whether the unplaced demand and some others all find a place when the rest is left out; null when it cannot be told.</summary>
    private bool? AreAllPlaced(UnplacedDemand unplaced, List<int> others)
    {
        var wanted = others.Select(KeyOf).Append(unplaced.Demand).ToHashSet(StringComparer.Ordinal);
        var found = again.Assign(
            again.Show,
            again.Options with
            {
                LeaveOut = problem
                    .Demands.Select(demand => demand.Node.Key)
                    .Where(key => !wanted.Contains(key))
                    .Concat(again.Options.LeaveOut)
                    .Distinct()
                    .ToValueList(),
                Budget = Math.Min(AttemptBudget, again.Options.Budget),
            }
        );
        if (found is null)
        {
            return null;
        }

        var isPlaced = found.Unplaced.All(entry =>
            !wanted.Contains(entry.Demand)
            || (entry.Demand != unplaced.Demand || entry.Sink != unplaced.Sink)
                && result.Unplaced.Any(known => known.Demand == entry.Demand && known.Sink == entry.Sink)
        );
        return isPlaced ? true
            : found.Status is AssignmentStatus.Feasible or AssignmentStatus.Stopped ? null
            : false;
    }
}
