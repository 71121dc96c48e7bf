using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search;

/// <summary>Places some demands anew while all others stay, trying the most hampered demand first and cheap places before dear ones.</summary>
/// <remarks>
/// The bound of a partial placement adds to its key the least that each open demand costs by itself, which is a bound because keys are ordered
/// lexicographically, costs never shrink as more is placed, and what open demands may share (groups, blocks) is left out of it.
/// </remarks>
internal sealed class PlacementSearch
{
    /// <summary>Places looked at for one unit of the evaluator's work, which costs that much more.</summary>
    private const int StepsPerUnit = 20;

    private readonly AssignmentProblem problem;
    private readonly Evaluator evaluator;
    private readonly Part part;
    private readonly PlacementTally tally;
    private readonly CancellationToken cancellation;
    private readonly int groupsAt;
    private readonly int transmitAt;
    private readonly int receiveAt;
    private readonly List<PlacementLayer> layers = [];
    private readonly long[] incumbent = new long[PlacementTally.KeyLength];
    private int[] free = [];
    private bool[] sharesGroup = [];
    private SearchEffort effort;
    private int nodes;
    private int leaves;
    private long steps;
    private bool isCut;
    private bool hasImproved;

    public PlacementSearch(AssignmentProblem problem, Evaluator evaluator, Part part, PlacementTally tally, CancellationToken cancellation)
    {
        this.problem = problem;
        this.evaluator = evaluator;
        this.part = part;
        this.tally = tally;
        this.cancellation = cancellation;
        groupsAt = tally.PlaceOf(ObjectiveLevel.Groups);
        transmitAt = tally.PlaceOf(ObjectiveLevel.TransmitBlocks);
        receiveAt = tally.PlaceOf(ObjectiveLevel.ReceiveBlocks);
        PlacementLevels = Math.Min(tally.PlaceOf(ObjectiveLevel.Rewritten), Math.Min(transmitAt, receiveAt));
    }

    /// <summary>Numbers of a key that places alone decide, before the first one that the wiring decides.</summary>
    public int PlacementLevels { get; }

    /// <summary>The best score so far.</summary>
    public ChoiceScore? Best { get; private set; }

    /// <summary>The choices behind it, for every demand of the show.</summary>
    public int[] BestChoices { get; private set; } = [];

    /// <summary>True when the last search tried everything that could be better.</summary>
    public bool IsComplete => !isCut;

    /// <summary>Begins from a result, whose demands are counted from here on.</summary>
    public void Start(SearchResult result)
    {
        foreach (var index in part.Active)
        {
            tally.Add(index, result.Choices[index]);
        }

        Best = result.Score;
        BestChoices = [.. result.Choices];
    }

    /// <summary>Takes a better result of another search.</summary>
    public void Take(int[] choices, ChoiceScore score)
    {
        foreach (var index in part.Active)
        {
            if (choices[index] != BestChoices[index])
            {
                tally.Remove(index);
            }
        }

        foreach (var index in part.Active)
        {
            if (choices[index] != BestChoices[index])
            {
                tally.Add(index, choices[index]);
            }
        }

        Best = score;
        BestChoices = [.. choices];
    }

    /// <summary>Places demands anew.</summary>
    /// <param name="demands">Which, ascending; <see cref="PlacementTally.MostMarked"/> at most.</param>
    /// <param name="with">How hard to try.</param>
    /// <returns>True when the best score got better.</returns>
    public bool Run(int[] demands, SearchEffort with)
    {
        free = demands;
        effort = with;
        (nodes, leaves, steps, isCut, hasImproved) = (0, 0, 0, false, false);
        sharesGroup = Array.ConvertAll(
            free,
            index => problem.Demands[index].Group is >= 0 and var group && free.Count(other => problem.Demands[other].Group == group) > 1
        );
        Array.ForEach(free, tally.Remove);
        tally.Mark(free);
        Array.ForEach(free, index => tally.Add(index, BestChoices[index]));
        tally.Key.CopyTo(incumbent, 0);
        Array.ForEach(free, tally.Remove);
        Search(0);
        tally.Unmark(free);
        Array.ForEach(free, index => tally.Add(index, BestChoices[index]));
        evaluator.Spend(1 + (steps / StepsPerUnit));
        return hasImproved;
    }

    private void Search(int depth)
    {
        if (nodes++ >= effort.Nodes || evaluator.Work + (steps / StepsPerUnit) >= effort.WorkLimit || cancellation.IsCancellationRequested)
        {
            isCut = true;
            return;
        }

        if (depth == free.Length)
        {
            Judge();
            return;
        }

        var at = Pick();
        if (at < 0)
        {
            return;
        }

        while (layers.Count <= depth)
        {
            layers.Add(new PlacementLayer());
        }

        var layer = layers[depth];
        Fill(layer, free[at]);
        var count = Math.Min(layer.Count, effort.Width);
        isCut |= count < layer.Count;
        for (var i = 0; i < count; i++)
        {
            tally.Add(free[at], layer.Choices[i]);
            Search(depth + 1);
            tally.Remove(free[at]);
            if (nodes >= effort.Nodes || leaves >= effort.Leaves)
            {
                isCut |= i + 1 < count;
                return;
            }
        }
    }

    private void Fill(PlacementLayer layer, int index)
    {
        layer.Count = 0;
        foreach (var choice in part.Choices[index])
        {
            if (tally.Fits(index, choice))
            {
                layer.Add(choice);
                tally.Cost(index, choice, layer.Costs[layer.Count - 1], 1);
            }
        }

        if (!part.IsFirm[index])
        {
            layer.Add(Evaluator.Unplaced);
            tally.Cost(index, Evaluator.Unplaced, layer.Costs[layer.Count - 1], 1);
        }

        steps += layer.Count;
        layer.Sort();
    }

    /// <summary>The open demand with the fewest places; -1 when nothing better can come of what is placed.</summary>
    private int Pick()
    {
        Span<long> bound = stackalloc long[PlacementTally.KeyLength];
        Span<long> cost = stackalloc long[PlacementTally.KeyLength];
        Span<long> least = stackalloc long[PlacementTally.KeyLength];
        tally.Key.CopyTo(bound);
        var (picked, fewest) = (-1, int.MaxValue);
        for (var at = 0; at < free.Length; at++)
        {
            var index = free[at];
            if (tally.Choices[index] != Evaluator.Undecided)
            {
                continue;
            }

            var count = 0;
            foreach (var choice in part.Choices[index])
            {
                if (tally.Fits(index, choice))
                {
                    Least(at, choice, cost, least, count++);
                }
            }

            if (!part.IsFirm[index])
            {
                Least(at, Evaluator.Unplaced, cost, least, count++);
            }

            steps += part.Choices[index].Length;
            if (count == 0)
            {
                return -1;
            }

            for (var i = 0; i < bound.Length; i++)
            {
                bound[i] += least[i];
            }

            if (IsHopeless(bound))
            {
                return -1;
            }

            if (count < fewest)
            {
                (picked, fewest) = (at, count);
            }
        }

        return picked;
    }

    private void Least(int at, int choice, Span<long> cost, Span<long> least, int seen)
    {
        cost.Clear();
        tally.Cost(free[at], choice, cost, 1);
        cost[transmitAt] = cost[receiveAt] = 0;
        cost[groupsAt] = sharesGroup[at] ? 0 : cost[groupsAt];
        if (seen == 0 || cost.SequenceCompareTo(least) < 0)
        {
            cost.CopyTo(least);
        }
    }

    private bool IsHopeless(ReadOnlySpan<long> key)
    {
        var compared = key[..effort.Levels].SequenceCompareTo(incumbent.AsSpan(0, effort.Levels));
        return compared > 0 || (compared == 0 && !effort.TriesEqual);
    }

    private void Judge()
    {
        if (IsHopeless(tally.Key))
        {
            return;
        }

        leaves++;
        var score = evaluator.Evaluate(part.Active, tally.Choices, null, effort.WiringBudget, Best, out var isBestWiring);
        isCut |= !isBestWiring;
        if (score is null || score.CompareTo(Best!, evaluator.Order) >= 0)
        {
            return;
        }

        Best = score;
        BestChoices = [.. tally.Choices];
        tally.Key.CopyTo(incumbent, 0);
        hasImproved = true;
    }
}
