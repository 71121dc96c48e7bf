using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search.Feeders;

/// <summary>
/// Decides which devices feed what cannot be fed by all that want to, so that as little as possible stays without a place, and counts what must.
/// </summary>
/// <remarks>
/// Tier by tier: what is lost of the tier is made small by branch and bound over the units, and what is lost of the tiers before counts more by a penalty.
/// Every penalty gives a valid bound; which one gives a good one depends on the show.
/// </remarks>
internal sealed class FeederSearch(FeederProblem problem, CancellationToken cancellation)
{
    private const int StepsPerUnit = 8;

    private static readonly int[] Penalties = [1, 2, 4, 8];

    private readonly FeederTrial trial = new(problem);
    private long bounding;
    private int[]? best;
    private int[] bestFeeding = [];

    /// <summary>What must stay without a place, by tier: no placement is below it in the order of the tiers.</summary>
    public int[] Least { get; } = new int[ObjectiveNumbers.Tiers];

    /// <summary>Position of the set of devices that feeds each unit in the best way found.</summary>
    public int[] Feeding => bestFeeding;

    /// <summary>What the best way found loses, by tier.</summary>
    public int[] Best => best!;

    /// <summary>Work done in the units of the evaluator.</summary>
    public long Work => (trial.Work + bounding) / StepsPerUnit;

    /// <summary>Takes note of choices that stand; true when they lose less than all seen so far.</summary>
    public bool Learn(int[] choices)
    {
        var feeding = problem.FeedingOf(choices);
        var isBetter = Try(feeding);
        if (problem.LostOf(choices) is var lost && lost.AsSpan().SequenceCompareTo(best) < 0)
        {
            (best, bestFeeding, isBetter) = (lost, feeding, true);
        }

        return isBetter;
    }

    /// <summary>Searches.</summary>
    /// <param name="budget">Work to spend, in the units of the evaluator.</param>
    public void Run(long budget)
    {
        var end = Work + budget;
        if (best is null)
        {
            Try(new int[problem.Units.Length]);
        }

        Improve(Work + (budget / 4));
        var least = new int[Least.Length];
        for (var tier = 0; tier < least.Length; tier++)
        {
            least[tier] = LeastLost(tier, least, Work + ((end - Work) / (least.Length - tier)));
        }

        if (least.AsSpan().SequenceCompareTo(Least) > 0)
        {
            least.CopyTo(Least, 0);
        }
    }

    /// <summary>What must be lost of a tier when no more is lost of those before it than must be.</summary>
    private int LeastLost(int tier, int[] before, long workLimit)
    {
        if (!Enumerable.Range(0, problem.Demands.Length).Any(at => problem.TierOf(at) == tier))
        {
            return 0;
        }

        // Which penalty gives the best bound depends on the show.
        FeederTree? picked = null;
        var least = int.MinValue;
        foreach (var penalty in tier == 0 ? [1] : Penalties)
        {
            var tree = new FeederTree(problem, this, tier, penalty, cancellation);
            bounding += tree.Work;
            if (tree.LostBeyond(before) > least)
            {
                (picked, least) = (tree, tree.LostBeyond(before));
            }
        }

        bounding -= picked!.Work;
        picked.Run((workLimit - Work) * StepsPerUnit);
        bounding += picked.Work;
        return Math.Max(0, picked.LostBeyond(before));
    }

    /// <summary>Notes what sets of devices lose; true when it is the least so far.</summary>
    public bool Try(int[] chosen)
    {
        var lost = trial.Lost(chosen);
        if (best is not null && lost.AsSpan().SequenceCompareTo(best) >= 0)
        {
            return false;
        }

        (best, bestFeeding) = (lost, [.. chosen]);
        return true;
    }

    /// <summary>Feeds one unit or two from elsewhere as long as that helps.</summary>
    private void Improve(long workLimit)
    {
        int[] chosen = [.. bestFeeding];
        var open = Enumerable.Range(0, chosen.Length).Where(unit => problem.Feedings[unit].Length > 1).ToArray();
        var halfway = Work + ((workLimit - Work) / 2);
        while (
            Work < halfway
            && !cancellation.IsCancellationRequested
            && (Array.Exists(open, first => Change(chosen, [first])) || ChangeTwo(chosen, open, halfway))
        ) { }
    }

    private bool ChangeTwo(int[] chosen, int[] open, long workLimit)
    {
        for (var i = 0; i < open.Length; i++)
        {
            for (var j = i + 1; j < open.Length && Work < workLimit; j++)
            {
                if (Change(chosen, [open[i], open[j]]))
                {
                    return true;
                }
            }
        }

        return false;
    }

    /// <summary>Tries every other set of senders for the units together.</summary>
    private bool Change(int[] chosen, int[] units)
    {
        var unit = units[0];
        var before = chosen[unit];
        for (var set = 0; set < problem.Feedings[unit].Length; set++)
        {
            if (set == before)
            {
                continue;
            }

            chosen[unit] = set;
            if (units.Length == 1 ? Try(chosen) : Change(chosen, units[1..]))
            {
                return true;
            }
        }

        chosen[unit] = before;
        return false;
    }
}
