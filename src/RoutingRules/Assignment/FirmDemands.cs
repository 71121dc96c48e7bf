namespace RoutingRules.Assignment;

/// <summary>Settles which demands are firm: pins that can hold together, then as many held placements as possible.</summary>
internal sealed class FirmDemands
{
    private const long WiringBudget = 5_000;
    private const int MaxExactHolds = 14;

    private readonly AssignmentProblem problem;
    private readonly Evaluator evaluator;
    private readonly bool[] mayFill;

    public FirmDemands(AssignmentProblem problem, Evaluator evaluator)
    {
        this.problem = problem;
        this.evaluator = evaluator;
        IsFirm = new bool[problem.Demands.Length];
        Choices = Array.ConvertAll(problem.Demands, demand => Enumerable.Range(0, demand.Candidates.Length).ToArray());
        mayFill = new bool[problem.Show.Graph.PointCount];
        foreach (var demand in problem.Demands)
        {
            foreach (var candidate in demand.Candidates)
            {
                foreach (var point in candidate.Claims)
                {
                    mayFill[point] = true;
                }
            }
        }
    }

    /// <summary>For each demand whether it must be placed.</summary>
    public bool[] IsFirm { get; }

    /// <summary>For each demand the candidates that may be chosen.</summary>
    public int[][] Choices { get; }

    /// <summary>Sets of pins that cannot hold together, each in demand order and each smallest: without any one member the rest could. They are left out.</summary>
    public List<List<int>> Contradictions { get; } = [];

    /// <summary>Held demands that had to yield, in demand order.</summary>
    public List<int> Yielded { get; } = [];

    public void Settle()
    {
        var pins = problem.Demands.Where(demand => demand.IsPinned).Select(demand => demand.Index).ToList();
        DropEvenPairs(pins);
        while (!IsPossible(pins))
        {
            var conflict = Smallest(pins);
            Contradictions.Add(conflict);
            foreach (var index in conflict)
            {
                Choices[index] = [];
                pins.Remove(index);
            }
        }

        SettleHolds(pins);
    }

    /// <summary>A pinned pair that starts on an even number may stay if one stream can bring both halves; else it counts as unplaced, not as a contradiction.</summary>
    private void DropEvenPairs(List<int> pins)
    {
        foreach (var index in pins.ToArray())
        {
            var node = problem.Demands[index].Node;
            if (node.Width == 2 && problem.Show.Graph.NumberOf(node.Allowed[0]) % 2 == 0 && !IsPossible([index]))
            {
                pins.Remove(index);
                Choices[index] = [];
            }
        }
    }

    /// <summary>
    /// Gives up firmness in a part whose firm demands stand together only as long as outputs between them are not asked to be silent:
    /// its holds first, then its last pin.
    /// </summary>
    public void Weaken(int[] part)
    {
        var holds = part.Where(index => IsFirm[index] && !problem.Demands[index].IsPinned).ToArray();
        foreach (var index in holds)
        {
            IsFirm[index] = false;
            Choices[index] = [.. Enumerable.Range(0, problem.Demands[index].Candidates.Length)];
            Yielded.Add(index);
        }

        Yielded.Sort();
        if (holds.Length > 0)
        {
            return;
        }

        var pin = part.Last(index => IsFirm[index]);
        IsFirm[pin] = false;
        Choices[pin] = [];
        Contradictions.Add([pin]);
    }

    private void SettleHolds(List<int> pins)
    {
        var holds = new List<int>();
        foreach (var demand in problem.Demands)
        {
            if (!demand.Node.IsHeld || demand.IsPinned)
            {
                continue;
            }

            var staying = Choices[demand.Index].Where(choice => demand.Candidates[choice].IsExisting).ToArray();
            if (staying.Length == 0)
            {
                Yielded.Add(demand.Index);
            }
            else
            {
                holds.Add(demand.Index);
            }
        }

        foreach (var index in FewestYielding(pins, holds))
        {
            holds.Remove(index);
            Yielded.Add(index);
        }

        Yielded.Sort();
        foreach (var index in pins)
        {
            IsFirm[index] = true;
        }

        foreach (var index in holds)
        {
            IsFirm[index] = true;
            Choices[index] = [.. Choices[index].Where(choice => problem.Demands[index].Candidates[choice].IsExisting)];
        }
    }

    /// <summary>The smallest set of holds to give up; later and less important ones first among equals.</summary>
    private List<int> FewestYielding(List<int> pins, List<int> holds)
    {
        if (IsPossible([.. pins, .. holds]))
        {
            return [];
        }

        var byWorth = holds.OrderByDescending(index => problem.Demands[index].Tier).ThenByDescending(index => index).ToArray();
        for (var size = 1; size <= holds.Count && holds.Count <= MaxExactHolds; size++)
        {
            foreach (var yielding in Subsets(byWorth, size, 0))
            {
                if (IsPossible([.. pins, .. holds.Except(yielding)]))
                {
                    return yielding;
                }
            }
        }

        var kept = new List<int>();
        foreach (var index in byWorth.Reverse())
        {
            if (IsPossible([.. pins, .. kept, index]))
            {
                kept.Add(index);
            }
        }

        return [.. holds.Except(kept)];
    }

    private static IEnumerable<List<int>> Subsets(int[] items, int size, int from)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (var i = from; i + size <= items.Length; i++)
        {
            foreach (var rest in Subsets(items, size - 1, i + 1))
            {
                yield return [items[i], .. rest];
            }
        }
    }

    /// <summary>A set that is impossible and would be possible without any one of its members.</summary>
    private List<int> Smallest(List<int> pins)
    {
        var conflict = new List<int>(pins);
        foreach (var index in pins)
        {
            var smaller = conflict.Where(other => other != index).ToList();
            if (!IsPossible(smaller))
            {
                conflict = smaller;
            }
        }

        return conflict;
    }

    private bool IsPossible(List<int> firm)
    {
        if (firm.Count == 0)
        {
            return true;
        }

        var choices = GreedySearch.NewChoices(problem);
        foreach (var index in firm)
        {
            var demand = problem.Demands[index];
            choices[index] = demand.IsPinned
                ? Choices[index].Length == 0 ? Evaluator.Undecided : Choices[index][0]
                : Choices[index].First(choice => demand.Candidates[choice].IsExisting);
            if (choices[index] == Evaluator.Undecided)
            {
                return false;
            }
        }

        firm.Sort();
        return evaluator.Evaluate([.. firm], choices, mayFill, WiringBudget, null, out _) is not null;
    }
}
