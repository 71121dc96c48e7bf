namespace RoutingRules.Assignment.Search.Feeders;

/// <summary>Branch and bound over the units for one tier: as little as possible lost of it, with what is lost of the tiers before counting more.</summary>
internal sealed class FeederTree
{
    private const int RootRounds = 400;
    private const int NodeRounds = 20;
    private const int LeafRounds = 1000;

    private readonly FeederProblem problem;
    private readonly FeederSearch search;
    private readonly FeederBound bound;
    private readonly PriorityQueue<FeederNode, (long Bound, int Number)> open = new();
    private readonly int tier;
    private readonly int penalty;
    private readonly CancellationToken cancellation;
    private readonly int all;
    private long closed;
    private int number;

    public FeederTree(FeederProblem problem, FeederSearch search, int tier, int penalty, CancellationToken cancellation)
    {
        this.problem = problem;
        this.search = search;
        this.tier = tier;
        this.cancellation = cancellation;
        this.penalty = penalty;
        var worth = new int[problem.Demands.Length];
        for (var at = 0; at < worth.Length; at++)
        {
            worth[at] = Worth(problem.IsFirm(at) ? 0 : problem.TierOf(at));
        }

        all = worth.Sum();
        bound = new FeederBound(problem, worth);
        var decided = Array.ConvertAll(problem.Feedings, sets => sets.Length > 1 ? -1 : 0);
        Enter(new FeederNode(decided, new int[decided.Length], new long[worth.Length], all, -1), RootRounds);
    }

    /// <summary>What no way to feed the units can lose less than.</summary>
    public int Lost => Math.Min(LostAtBest, all - (int)Math.Max(closed, open.TryPeek(out var node, out _) ? node.Bound : 0));

    /// <summary>What must be lost of the tier when of the tiers before no more is lost than this.</summary>
    public int LostBeyond(int[] before) => Lost - Sum(before);

    /// <summary>Steps done, about as long as trying one place each.</summary>
    public long Work => bound.Work;

    private int LostAtBest => search.Best[tier] + Sum(search.Best);

    /// <summary>Decides units until the bound is what the best way found loses, or until told to end.</summary>
    /// <param name="steps">Steps to do, about as long as trying one place each.</param>
    public void Run(long steps)
    {
        var end = Work + steps;
        while (open.TryPeek(out var node, out _) && node.Bound > Math.Max(closed, all - LostAtBest) && Work < end && !cancellation.IsCancellationRequested)
        {
            open.Dequeue();
            for (var set = 0; set < problem.Feedings[node.Doubtful].Length; set++)
            {
                var decided = (int[])node.Decided.Clone();
                decided[node.Doubtful] = set;
                Enter(node with { Decided = decided, Chosen = [.. node.Chosen], Prices = [.. node.Prices] }, NodeRounds);
            }
        }
    }

    private void Enter(FeederNode node, int rounds)
    {
        var found = Math.Min(node.Bound, bound.Find(node, all - LostAtBest, rounds));
        search.Try(node.Chosen);
        if (found <= all - LostAtBest)
        {
            return;
        }

        if (bound.MostDoubtful(node.Decided) is >= 0 and var doubtful)
        {
            open.Enqueue(node with { Bound = found, Doubtful = doubtful }, (-found, number++));
        }
        else if (rounds < LeafRounds)
        {
            Enter(node with { Bound = found }, LeafRounds);
        }
        else
        {
            // Nothing is left to decide; whether pairs and single points fill the units as the prices say is not asked.
            closed = Math.Max(closed, found);
        }
    }

    /// <summary>What the losses of the tiers before count.</summary>
    private int Sum(int[] lost)
    {
        var sum = 0;
        for (var earlier = 0; earlier < tier; earlier++)
        {
            sum += lost[earlier] * Worth(earlier);
        }

        return sum;
    }

    /// <summary>One for the tier itself, the penalty once more for each tier before it.</summary>
    private int Worth(int of)
    {
        var worth = of > tier ? 0 : 1;
        for (; of < tier; of++)
        {
            worth *= penalty;
        }

        return worth;
    }
}
