using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>
/// The oracle of the assignment problem for tiny shows: tries every set of placements with every wiring that serves it.
/// Shares the trace and the rules with the verifier, and nothing with a strategy.
/// </summary>
/// <remarks>
/// Left out, because it cannot change the best vector: placements that break a rule of places alone; blocks and slot contents that no placed
/// demand uses, since dropping them breaks no rule and never raises a number; wirings whose numbers so far are already no better than the best
/// one found, since the numbers only grow as demands are wired. Not covered: processing inside devices, senders whose fixed positions force a
/// stray, and channels routed in blocks.
/// </remarks>
internal sealed class BruteForce
{
    private static readonly ValueList<ObjectiveLevel> UsualOrder = [.. Enum.GetValues<ObjectiveLevel>()];

    private readonly AssignmentFacts facts;
    private readonly BruteForceWiring wiring;
    private readonly ValueList<ObjectiveLevel> order;

    private readonly IReadOnlyList<string> without;

    private BruteForce(Show show, AssignmentOptions options, IReadOnlyList<string>? without = null)
    {
        this.without = without ?? [];
        facts = new AssignmentFacts(show, options, _ => null);
        wiring = new BruteForceWiring(facts);
        order = options.Order.IsEmpty ? UsualOrder : options.Order;
    }

    /// <summary>Finds the best.</summary>
    public static BruteForceResult Solve(Show show, AssignmentOptions options) => new BruteForce(show, options).Solve();

    /// <summary>Finds the best of those results that leave some pins out.</summary>
    public static BruteForceResult SolveWithout(Show show, AssignmentOptions options, IReadOnlyList<string> pins) =>
        new BruteForce(show, options, pins).Solve();

    /// <summary>
    /// Whether some demands can all be placed, lines with all they deliver, while all others are left out. Held ones stay where they are.
    /// </summary>
    public static bool CanPlace(Show show, AssignmentOptions options, IReadOnlyCollection<string> keys) => new BruteForce(show, options).CanPlace(keys);

    private bool CanPlace(IReadOnlyCollection<string> keys)
    {
        var choices = facts
            .Demands.Select(demand =>
                !keys.Contains(demand.Key) ? [new BruteForceChoice(null, [])]
                : demand is { IsPinned: true, Feed: not null } ? (demand.Runs.Count == 0 ? [] : [new(demand.Runs[0], [])])
                : Choices(demand)
                    .Where(choice => choice.At is { } at && choice.Sinks.Count == (demand.Line?.To.Count ?? 0) && (!demand.IsHeld || at == demand.Existing))
                    .ToList()
            )
            .ToList();
        var tuples = new List<Tuple>();
        Enumerate(choices, new BruteForceChoice[choices.Count], 0, [], tuples);
        var others = facts
            .Demands.Where(demand => demand is { IsPinned: true, Feed: not null } && !keys.Contains(demand.Key))
            .Select(demand => demand.Key)
            .ToList();
        return tuples.Exists(tuple => wiring.IsPossible(tuple.Choices, [.. others]));
    }

    private BruteForceResult Solve()
    {
        var pins = facts
            .Demands.Where(demand => demand is { IsPinned: true, Feed: not null } && !facts.IsPinOutOfUse(demand) && !without.Contains(demand.Key))
            .ToList();
        pins = WithoutEvenPairsInTheWay(pins);
        var contradictions = CanHold(pins) ? [] : MinimalConflicts(pins);
        if (contradictions.Count > 0)
            return new BruteForceResult { Contradictions = contradictions.ToValueList() };

        var choices = facts.Demands.Select(demand => pins.Contains(demand) ? [new(demand.Runs[0], [])] : Choices(demand)).ToList();
        var tuples = new List<Tuple>();
        Enumerate(choices, new BruteForceChoice[choices.Count], 0, [], tuples);
        tuples.Sort(Compare);
        for (var start = 0; start < tuples.Count; )
        {
            var end = start;
            while (end < tuples.Count && ComparePrefix(tuples[start], tuples[end]) == 0)
                end++;

            if (Best(tuples[start..end]) is { } best)
                return best;

            start = end;
        }

        throw new InvalidOperationException("Not even the pins alone can be wired.");
    }

    // A pair pinned on an even number counts as unplaced when it cannot stand; it never contradicts. Fewest are left out, later ones first.
    private List<DemandFacts> WithoutEvenPairsInTheWay(List<DemandFacts> pins)
    {
        var even = pins.Where(IsEvenPair).Reverse().ToList();
        foreach (var bits in Enumerable.Range(0, 1 << even.Count).OrderBy(bits => int.PopCount(bits)).ThenBy(bits => bits))
        {
            var rest = pins.Where(pin => !IsEvenPair(pin) || (bits >> even.IndexOf(pin) & 1) == 0).ToList();
            if (CanHold(rest))
                return rest;
        }

        return pins.Where(pin => !IsEvenPair(pin)).ToList();
    }

    private static bool IsEvenPair(DemandFacts demand) => demand.Width == 2 && demand.Runs[0].First % 2 == 0;

    // Some pins can hold when there is a patch with them, by themselves or beside other demands that make what they bring along welcome.
    private bool CanHold(List<DemandFacts> some)
    {
        var alone = facts.Demands.Select(demand => some.Contains(demand) ? new BruteForceChoice(demand.Runs[0], []) : new BruteForceChoice(null, [])).ToArray();
        if (IsPossible(alone, some))
            return true;

        var choices = facts.Demands.Select(demand => some.Contains(demand) ? [new(demand.Runs[0], [])] : Choices(demand)).ToList();
        var tuples = new List<Tuple>();
        Enumerate(choices, new BruteForceChoice[choices.Count], 0, [], tuples);
        return tuples.Exists(tuple => IsPossible(tuple.Choices, some));
    }

    private bool IsPossible(BruteForceChoice[] choices, List<DemandFacts> some)
    {
        var others = facts.Demands.Where(demand => demand is { IsPinned: true, Feed: not null } && !some.Contains(demand)).Select(demand => demand.Key);
        return !PlacementRules.Problems(facts, At(choices)).Any() && wiring.IsPossible(choices, [.. others]);
    }

    private List<ValueList<string>> MinimalConflicts(List<DemandFacts> pins)
    {
        var found = new List<List<DemandFacts>>();
        foreach (
            var set in Enumerable
                .Range(1, (1 << pins.Count) - 1)
                .OrderBy(bits => int.PopCount(bits))
                .Select(bits => pins.Where((_, i) => (bits >> i & 1) == 1).ToList())
        )
        {
            if (!found.Any(smaller => smaller.All(set.Contains)) && !CanHold(set))
                found.Add(set);
        }

        return found.Select(set => set.Select(demand => demand.Key).ToValueList()).ToList();
    }

    private List<BruteForceChoice> Choices(DemandFacts demand)
    {
        var choices = new List<BruteForceChoice> { new(null, []) };
        if (demand is { IsPinned: true, Feed: not null })
            return choices;

        var runs = demand.IsSplit ? [demand.Runs[0]] : demand.Runs.Concat(demand.EvenRuns);
        foreach (
            var run in runs.Where(run =>
                AssignmentFacts.Allows(demand, run) && (demand.IsPinned || Enumerable.Range(0, run.Width).All(i => facts.Rig.IsUsable(run[i])))
            )
        )
        {
            if (demand.Line is not { } line)
            {
                choices.Add(new(run, []));
                continue;
            }

            for (var bits = 1; bits < 1 << line.To.Count; bits++)
                choices.Add(new(run, line.To.Where((_, i) => (bits >> i & 1) == 1).ToValueList()));
        }

        return choices;
    }

    private void Enumerate(List<List<BruteForceChoice>> choices, BruteForceChoice[] chosen, int index, HashSet<Point> taken, List<Tuple> tuples)
    {
        if (index == choices.Count)
        {
            var at = At(chosen);
            if (!PlacementRules.Problems(facts, at).Any())
                tuples.Add(Measure((BruteForceChoice[])chosen.Clone(), at));

            return;
        }

        foreach (var choice in choices[index])
        {
            var points = choice.At is { } run ? facts.Demands[index].Occupies(run).ToList() : [];
            if (points.Any(taken.Contains))
                continue;

            taken.UnionWith(points);
            chosen[index] = choice;
            Enumerate(choices, chosen, index + 1, taken, tuples);
            taken.ExceptWith(points);
        }
    }

    private Tuple Measure(BruteForceChoice[] chosen, PointRange?[] at)
    {
        var failed = facts
            .Demands.Select(demand =>
                demand.Deliveries
                - (
                    chosen[demand.Index].At is null ? 0
                    : demand.Line is null ? 1
                    : chosen[demand.Index].Sinks.Count
                )
            )
            .ToArray();
        return new Tuple(
            chosen,
            VectorCount.Placements(facts, at, failed),
            [.. facts.Demands.Where(demand => failed[demand.Index] > 0).Select(demand => demand.Index)]
        );
    }

    private BruteForceResult? Best(List<Tuple> tuples)
    {
        BruteForceResult? best = null;
        foreach (var tuple in tuples)
        {
            if (wiring.Best(tuple.Choices, tuple.Numbers, best?.Vector, order, without) is { } better)
                best = better with { Failed = tuple.Failed.Select(index => facts.Demands[index].Key).ToValueList() };
        }

        return best;
    }

    // Holds yield only where they must, so the fewest yielding ones come before all else; then levels 1 and 2; then whose delivery fails.
    private static int CompareStart(Tuple left, Tuple right)
    {
        foreach (var i in (int[])[4, 0, 1, 2, 3, 5])
        {
            if (left.Numbers[i] != right.Numbers[i])
                return left.Numbers[i].CompareTo(right.Numbers[i]);
        }

        for (var i = 0; i < Math.Max(left.Failed.Length, right.Failed.Length); i++)
        {
            var (one, other) = (i < left.Failed.Length ? left.Failed[i] : int.MaxValue, i < right.Failed.Length ? right.Failed[i] : int.MaxValue);
            if (one != other)
                return other.CompareTo(one);
        }

        return 0;
    }

    // Equal in all that is decided before the first number that depends on the wiring.
    private int ComparePrefix(Tuple left, Tuple right)
    {
        var start = CompareStart(left, right);
        foreach (var level in start == 0 ? order : [])
        {
            if (level is ObjectiveLevel.Rewritten or ObjectiveLevel.TransmitBlocks or ObjectiveLevel.ReceiveBlocks)
                break;

            if (left.Numbers[6 + (int)level] != right.Numbers[6 + (int)level])
                return left.Numbers[6 + (int)level].CompareTo(right.Numbers[6 + (int)level]);
        }

        return start;
    }

    private int Compare(Tuple left, Tuple right)
    {
        var prefix = ComparePrefix(left, right);
        return prefix != 0 ? prefix : left.Numbers[13].CompareTo(right.Numbers[13]);
    }

    private static PointRange?[] At(BruteForceChoice[] chosen) => [.. chosen.Select(choice => choice.At)];

    private sealed record Tuple(BruteForceChoice[] Choices, int[] Numbers, int[] Failed);
}
