using RoutingRules.Assignment.Problem;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Demands that together need more points than they may use.</summary>
/// <remarks>
/// Found by alternating steps from an unplaced demand: the points it may use, whoever stands there, the points those may use, and so on. When the
/// points reached are fewer than the demands reached need, that is the proof, whatever the routing could do. With pairs and single points mixed
/// there may be no such proof although a place is missing, because single points can lie badly; then nothing is claimed.
/// </remarks>
internal sealed class OversubscribedPoints
{
    /// <summary>The demands beside the unplaced one, ascending.</summary>
    public required int[] Others { get; init; }

    /// <summary>The points, ascending.</summary>
    public required int[] Points { get; init; }

    /// <summary>Finds the set around a demand; null when counting proves nothing.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="placedAt">For each demand the first point of its place; -1 when it has none.</param>
    /// <param name="start">The unplaced demand.</param>
    public static OversubscribedPoints? Find(AssignmentProblem problem, int[] placedAt, int start)
    {
        var occupant = new int[problem.Show.Graph.PointCount];
        Array.Fill(occupant, -1);
        foreach (var demand in problem.Demands)
        {
            if (placedAt[demand.Index] >= 0)
            {
                occupant.AsSpan(placedAt[demand.Index], demand.Node.Width).Fill(demand.Index);
            }
        }

        var isReached = new bool[problem.Demands.Length];
        var points = new SortedSet<int>();
        var open = new Queue<int>([start]);
        isReached[start] = true;
        var needed = 0;
        while (open.TryDequeue(out var index))
        {
            var demand = problem.Demands[index];
            if (demand.Candidates.Length == 0 || IsSplit(demand.Node))
            {
                return null;
            }

            needed += demand.Node.Width;
            foreach (var candidate in demand.Candidates)
            {
                if (IsStuck(demand, placedAt[index]) && candidate.First != placedAt[index])
                {
                    continue;
                }

                for (var point = candidate.First; point < candidate.First + demand.Node.Width; point++)
                {
                    if (points.Add(point) && occupant[point] is >= 0 and var other && !isReached[other])
                    {
                        isReached[other] = true;
                        open.Enqueue(other);
                    }
                }
            }
        }

        return needed <= points.Count
            ? null
            : new OversubscribedPoints
            {
                Others = [.. Enumerable.Range(0, isReached.Length).Where(index => isReached[index] && index != start)],
                Points = [.. points],
            };
    }

    /// <summary>Held demands stay where they are, whoever else wants the place.</summary>
    private static bool IsStuck(Demand demand, int at) => demand.Node.IsHeld && at >= 0 && at == demand.Existing;

    private static bool IsSplit(DemandNode node) => node.Line is { Model.From.At.Count: > 1 };
}
