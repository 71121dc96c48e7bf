using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>How many demands must stay without a place because too many want the same points.</summary>
/// <remarks>
/// A matching of points to halves of demands, each half by itself: what cannot be matched this way cannot be placed either. A demand left out
/// frees at most its width, so halves without a point, divided by the greatest width, are demands without a place.
/// </remarks>
internal sealed class DeficitBound
{
    private readonly AssignmentProblem problem;
    private readonly int[][] choices;
    private readonly Dictionary<int, int> halfAt = [];
    private readonly List<int[]> pointsOf = [];
    private readonly HashSet<int> visited = [];

    public DeficitBound(AssignmentProblem problem, int[][] choices)
    {
        this.problem = problem;
        this.choices = choices;
    }

    /// <summary>For each tier a number that failed deliveries of it and the tiers before cannot go below together.</summary>
    /// <param name="demands">Demands that share no point with others.</param>
    public int[] UpToTier(int[] demands)
    {
        var bounds = new int[ObjectiveNumbers.Tiers];
        var extras = new List<int>();
        var forced = 0;
        var widest = 1;
        var unmatched = 0;
        for (var tier = 0; tier < bounds.Length; tier++)
        {
            foreach (var index in demands)
            {
                var demand = problem.Demands[index];
                if (demand.Tier != tier)
                {
                    continue;
                }

                var least = demand.LeastFailed(choices[index]);
                forced += least;
                if (choices[index].Length == 0)
                {
                    continue;
                }

                extras.Add(demand.Weight - least);
                widest = Math.Max(widest, demand.Node.Width);
                for (var half = 0; half < demand.Node.Width; half++)
                {
                    pointsOf.Add([.. choices[index].Select(choice => demand.Candidates[choice].First + half).Distinct()]);
                    visited.Clear();
                    unmatched += Match(pointsOf.Count - 1) ? 0 : 1;
                }
            }

            bounds[tier] = forced + extras.Order().Take((unmatched + widest - 1) / widest).Sum();
        }

        return bounds;
    }

    private bool Match(int half)
    {
        foreach (var point in pointsOf[half])
        {
            if (!halfAt.ContainsKey(point))
            {
                halfAt[point] = half;
                return true;
            }
        }

        foreach (var point in pointsOf[half])
        {
            if (visited.Add(point) && Match(halfAt[point]))
            {
                halfAt[point] = half;
                return true;
            }
        }

        return false;
    }
}
