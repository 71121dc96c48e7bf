using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Places some demands anew in list order while all others stay.</summary>
internal sealed class OrderRefill(AssignmentProblem problem, Evaluator evaluator, Part part, CancellationToken cancellation)
{
    private readonly WiringFloor floor = new(problem);

    /// <summary>The choices with some demands placed anew; null when that does not work out.</summary>
    /// <param name="free">The demands, ascending.</param>
    /// <param name="choices">A choice for every demand of the show.</param>
    /// <param name="width">States to keep at most.</param>
    public int[]? Run(int[] free, int[] choices, int width)
    {
        var isFree = new HashSet<int>(free);
        var isFirm = new bool[problem.Demands.Length];
        var allowed = new int[problem.Demands.Length][];
        foreach (var index in Related(isFree, choices))
        {
            isFirm[index] = !isFree.Contains(index) || part.IsFirm[index];
            allowed[index] = isFree.Contains(index) ? part.Choices[index] : [choices[index]];
        }

        var demands = Enumerable.Range(0, allowed.Length).Where(index => allowed[index] is not null).ToArray();
        var list = new OrderProblem(
            problem,
            floor,
            new Part
            {
                Active = demands,
                Choices = allowed,
                IsFirm = isFirm,
            },
            demands,
            mayShare: false
        );
        var beam = new OrderBeam(problem, list, evaluator.Order);
        var last = beam.Run(width, cancellation);
        evaluator.Spend(1 + beam.Work + (demands.Length * (long)free.Length / OrderBeam.StepsPerUnit));
        if (last is null)
        {
            return null;
        }

        var found = (int[])choices.Clone();
        list.Read(last, found);
        return Array.Exists(free, index => part.IsFirm[index] && found[index] < 0) ? null : found;
    }

    /// <summary>The free demands, and placed ones that share a device, a set, a group or a separation with them.</summary>
    private IEnumerable<int> Related(HashSet<int> free, int[] choices)
    {
        var devices = new HashSet<int>();
        var sets = new HashSet<int>();
        var groups = new HashSet<int>();
        var apart = new HashSet<int>();
        foreach (var index in free)
        {
            var demand = problem.Demands[index];
            sets.Add(demand.Set);
            groups.Add(demand.Group);
            apart.UnionWith(demand.Separations.Select(separate => separate.Other));
            foreach (var choice in part.Choices[index])
            {
                devices.Add(demand.Candidates[choice].Device);
            }
        }

        foreach (var index in part.Active)
        {
            var demand = problem.Demands[index];
            if (
                free.Contains(index)
                || (
                    choices[index] >= 0
                    && (
                        devices.Contains(demand.Candidates[choices[index]].Device)
                        || (demand.Set >= 0 && sets.Contains(demand.Set))
                        || (demand.Group >= 0 && groups.Contains(demand.Group))
                        || apart.Contains(index)
                    )
                )
            )
            {
                yield return index;
            }
        }
    }
}
