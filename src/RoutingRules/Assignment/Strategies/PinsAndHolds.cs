using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Settles which demands are firm: pins that can hold together, then as many held placements as possible.</summary>
internal sealed class PinsAndHolds
{
    private const long WiringBudget = 5_000;

    private readonly AssignmentProblem problem;
    private readonly Evaluator evaluator;
    private readonly bool[] mayFill;

    /// <summary>
    /// Demands whose points nobody else may have. Whoever stands on the points it is given keeps others away by itself; so the search sees them as
    /// open until one is left out, and demands that are alike stay alike for it.
    /// </summary>
    private readonly HashSet<int> closed = [];

    public PinsAndHolds(AssignmentProblem problem, Evaluator evaluator)
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

    /// <summary>
    /// Sets of pins that cannot hold together, each in demand order and each smallest: without any one member the rest could. They are left out.
    /// </summary>
    public List<List<int>> Contradictions { get; } = [];

    /// <summary>Held demands that can stay where they are as far as they alone are concerned, in demand order.</summary>
    public List<int> Holds { get; private set; } = [];

    /// <summary>Held demands that had to yield, in demand order.</summary>
    public List<int> Yielded { get; } = [];

    /// <summary>Makes pins firm; whether they can hold together, the search of their part decides.</summary>
    public void Settle()
    {
        var pins = problem.Demands.Where(demand => demand.IsPinned).Select(demand => demand.Index).ToList();
        DropEvenPairs(pins);
        SettleHolds(pins);
        foreach (var demand in problem.Demands)
        {
            if (Choices[demand.Index].Length == 0)
            {
                Close(demand.Index);
            }
        }
    }

    /// <summary>
    /// A pinned pair that starts on an even number may stay if one stream can bring both halves; else it counts as unplaced, not as a contradiction.
    /// </summary>
    private void DropEvenPairs(List<int> pins)
    {
        foreach (var index in pins.ToArray())
        {
            if (IsEvenPair(index) && !IsPossible([index]))
            {
                pins.Remove(index);
                Choices[index] = [];
            }
        }
    }

    /// <summary>
    /// What to leave out of pins that cannot stand together: the last pair that starts even, which never contradicts; else all of them, as a
    /// contradiction, if all routes were tried.
    /// </summary>
    public List<int> LeftOutOf(List<int> conflict)
    {
        if (conflict.Exists(IsEvenPair))
        {
            return [conflict.FindLast(IsEvenPair)];
        }

        if (problem.Untried.Count > 0)
        {
            // They might stand together on routes that were not tried: the least important one goes, and nothing is claimed.
            return [conflict.OrderBy(index => problem.Demands[index].Tier).ThenBy(index => index).Last()];
        }

        Contradictions.Add(conflict);
        return conflict;
    }

    /// <summary>True for a pinned pair that starts on an even number.</summary>
    private bool IsEvenPair(int index)
    {
        var node = problem.Demands[index].Node;
        return node.IsPinned && node.Width == 2 && problem.Show.Graph.NumberOf(node.Allowed[0]) % 2 == 0;
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

        Yielded.Sort();
        foreach (var index in pins)
        {
            IsFirm[index] = true;
        }

        Holds = holds;
    }

    /// <summary>Keeps a held demand where it is.</summary>
    public void Hold(int index)
    {
        IsFirm[index] = true;
        Choices[index] = Staying(problem.Demands[index]);
    }

    /// <summary>Lets a held demand go where it may.</summary>
    public void Release(int index)
    {
        IsFirm[index] = false;
        Choices[index] = Open(problem.Demands[index]);
    }

    /// <summary>Leaves a pinned demand out; its point stays free.</summary>
    public void Drop(int index)
    {
        IsFirm[index] = false;
        Choices[index] = [];
        Close(index);
    }

    /// <summary>Makes a pinned demand firm again.</summary>
    public void Pin(int index)
    {
        IsFirm[index] = true;
        Choices[index] = [.. Enumerable.Range(0, problem.Demands[index].Candidates.Length)];
        closed.Remove(index);
        LookAgainAt(index);
    }

    /// <summary>A quick test: false when the firm demands among some surely cannot stand together.</summary>
    public bool MayStand(int[] part) => IsPossible([.. part.Where(index => IsFirm[index])]);

    /// <summary>True when the firm demands among some can stand while nothing else is placed.</summary>
    public bool StandAlone(int[] part) => IsPossible([.. part.Where(index => IsFirm[index])], null);

    private static int[] Where(Demand demand, Func<Candidate, bool> fits) =>
        [.. Enumerable.Range(0, demand.Candidates.Length).Where(choice => fits(demand.Candidates[choice]))];

    private static int[] Staying(Demand demand) => Where(demand, candidate => candidate.IsExisting);

    private int[] Open(Demand demand) => Where(demand, candidate => problem.Given.Owners(demand, candidate.First).All(owner => !closed.Contains(owner.Index)));

    /// <summary>Closes points that are given to demands where others were placed there.</summary>
    /// <returns>True when there were any, so that the search has to go on without them.</returns>
    public bool TakeBack(int[] part, int[] placed)
    {
        var owners = part.Where(index => placed[index] >= 0)
            .SelectMany(index => problem.Given.Owners(problem.Demands[index], problem.Demands[index].Candidates[placed[index]].First))
            .Select(owner => owner.Index)
            .Distinct()
            .ToList();
        owners.ForEach(Close);
        return owners.Count > 0;
    }

    private void Close(int owner)
    {
        closed.Add(owner);
        LookAgainAt(owner);
    }

    /// <summary>Opens or closes the points that are given to a demand for all others.</summary>
    private void LookAgainAt(int index)
    {
        foreach (var demand in problem.Demands)
        {
            if (Array.Exists(demand.Candidates, candidate => problem.Given.Owners(demand, candidate.First).Any(owner => owner.Index == index)))
            {
                Choices[demand.Index] = IsFirm[demand.Index] ? Staying(demand) : Open(demand);
            }
        }
    }

    /// <summary>Of pins that surely cannot stand together, some of which that is still sure, and would not be without any one of them; else all.</summary>
    public int[] Narrowed(int[] pins)
    {
        var conflict = pins.ToList();
        foreach (var index in IsPossible([.. pins]) ? [] : pins)
        {
            var smaller = conflict.Where(other => other != index).ToList();
            conflict = IsPossible(smaller) ? conflict : smaller;
        }

        return [.. conflict];
    }

    private bool IsPossible(List<int> firm) => IsPossible(firm, mayFill);

    private bool IsPossible(List<int> firm, bool[]? open)
    {
        if (firm.Count == 0)
        {
            return true;
        }

        var choices = GreedySearch.NewChoices(problem);
        var settled = new List<int>();
        foreach (var index in firm)
        {
            // A line that stays may reach more or fewer of its sinks; which, is not for this test to say.
            var ways = problem.Demands[index].IsPinned
                ? Choices[index]
                : [.. Choices[index].Where(choice => problem.Demands[index].Candidates[choice].IsExisting)];
            if (ways.Length == 0)
            {
                return false;
            }

            if (problem.Demands[index].IsPinned || ways.Length == 1)
            {
                choices[index] = ways[0];
                settled.Add(index);
            }
        }

        settled.Sort();
        return evaluator.Evaluate([.. settled], choices, open, WiringBudget, null, out _) is not null;
    }
}
