using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>Tries every wiring that serves given placements.</summary>
internal sealed class BruteForceWiring
{
    private readonly AssignmentFacts facts;
    private readonly RigFacts rig;
    private BruteForceState state = new();
    private BruteForceChoice[] choices = [];
    private HashSet<Point> places = [];
    private List<Need> needs = [];
    private int[]? numbers;
    private ValueList<ObjectiveLevel> order;
    private IReadOnlyList<string> leftOut = [];
    private ObjectiveVector? bound;
    private BruteForceResult? best;

    public BruteForceWiring(AssignmentFacts facts)
    {
        this.facts = facts;
        rig = facts.Rig;
    }

    /// <summary>Whether some placements can be wired at all.</summary>
    /// <param name="chosen">How each demand is placed.</param>
    /// <param name="without">Pins that are left out on purpose.</param>
    public bool IsPossible(BruteForceChoice[] chosen, IReadOnlyList<string> without) => Search(chosen, null, null, default, without) is not null;

    /// <summary>The best wiring of some placements, or null when none is valid or none is better than a bound.</summary>
    /// <param name="chosen">How each demand is placed.</param>
    /// <param name="placed">The numbers the placements alone decide.</param>
    /// <param name="than">The vector to be better than; null for any.</param>
    /// <param name="levels">The order of the levels.</param>
    /// <param name="without">Pins that are left out on purpose.</param>
    public BruteForceResult? Best(
        BruteForceChoice[] chosen,
        int[] placed,
        ObjectiveVector? than,
        ValueList<ObjectiveLevel> levels,
        IReadOnlyList<string> without
    ) => Search(chosen, placed, than, levels, without);

    private BruteForceResult? Search(
        BruteForceChoice[] chosen,
        int[]? placed,
        ObjectiveVector? than,
        ValueList<ObjectiveLevel> levels,
        IReadOnlyList<string> without
    )
    {
        choices = chosen;
        leftOut = without;
        order = levels;
        bound = than;
        numbers = placed;
        best = null;
        state = BruteForceState.Of(facts);
        needs = [];
        places = facts
            .Demands.Where(demand => choices[demand.Index].At is not null)
            .SelectMany(demand => demand.Occupies(choices[demand.Index].At!.Value))
            .Concat(choices.SelectMany(choice => choice.Sinks).SelectMany(sink => Enumerable.Range(0, sink.Width).Select(i => sink[i])))
            .ToHashSet();
        foreach (var demand in facts.Demands)
        {
            if (choices[demand.Index].At is not { } run)
                continue;

            var isUnmoved = demand.Existing == run;
            if (demand.Line is null)
                needs.Add(new Need([(demand.Feed!.Source, run)], isUnmoved));
            else
                needs.AddRange(
                    choices[demand.Index]
                        .Sinks.Select(sink => new Need(
                            [.. (demand.IsSplit ? demand.Runs : (IReadOnlyList<PointRange>)[run]).Select(from => (from, sink))],
                            isUnmoved
                        ))
                );
        }

        Wire(0, 0);
        return best;
    }

    // A need is served side by side: the left side of a pair, then the right one in the same stream.
    private void Wire(int index, int side)
    {
        // Contents and subscriptions only grow, so a stray or a limit exceeded stays so.
        if (!IsPromising() || !state.IsQuiet(facts, places) || state.ExceedsLimit(facts))
            return;

        if (index == needs.Count)
        {
            Finish();
            return;
        }

        foreach (var (from, to) in needs[index].Ways)
        {
            if (side == 0 || state.Way == (from, to))
            {
                var way = state.Way;
                state.Way = (from, to);
                WireSide(index, side, from, to);
                state.Way = way;
            }
        }
    }

    private void WireSide(int index, int side, PointRange from, PointRange to)
    {
        var (source, sink) = (from[side], to[side]);
        var (nextIndex, nextSide) = side + 1 < to.Width ? (index, side + 1) : (index + 1, 0);
        if (rig.IsExcluded(source) || rig.IsExcluded(sink))
            return;

        if (source.Device == sink.Device)
        {
            var start = state.Mark();
            if (CanRoute(source, sink) && state.TryRoute(rig, sink, source) && state.TryWrite(sink, source))
                Wire(nextIndex, nextSide);

            state.Restore(start);
            return;
        }

        foreach (var receive in Slots(sink, PortKind.Receive, slot => slot == sink || CanRoute(slot, sink), sink))
        {
            foreach (var transmit in Slots(source, PortKind.Transmit, slot => CanRoute(source, slot), null))
            {
                var (sender, receiver) = (rig.Group(transmit)!, rig.Group(receive)!);
                var isAligned =
                    sender.BlockSize % receiver.BlockSize == 0 && (transmit.Number - 1) % receiver.BlockSize == (receive.Number - 1) % receiver.BlockSize;
                if (!isAligned || (side > 0 && VectorCount.FirstOfBlock(rig, transmit) != state.LastBlock))
                    continue;

                var mark = state.Mark();
                if (state.TryConnect(rig, transmit, receive, source) && (receive == sink || state.TryRoute(rig, sink, receive)))
                {
                    state.LastBlock = VectorCount.FirstOfBlock(rig, transmit);
                    if (needs[index].IsUnmoved)
                        state.Note(transmit, receive);

                    Wire(nextIndex, nextSide);
                }

                state.Restore(mark);
            }
        }
    }

    private IEnumerable<Point> Slots(Point end, PortKind kind, Func<Point, bool> fits, Point? pinned) =>
        rig.Device(end.Device)!
            .Groups.Where(group => group.Kind == kind)
            .SelectMany(group => Enumerable.Range(1, group.LastWhole).Select(group.At))
            .Where(slot => fits(slot) && !rig.IsExcluded(slot) && (slot == pinned || rig.IsUsable(slot)));

    private bool CanRoute(Point from, Point to) =>
        rig.Group(to) is { } group
        && (
            group.FixedFrom is { } own
                ? to.Number <= own.Count && own.At(to.Number) == from
                : BruteForceBlocks.Entry(rig, from, to) is not null
                    || rig.Device(to.Device)!.Profile!.Routing.Any(entry => entry.Mode == RoutingMode.Free && entry.From == from.Group && entry.To == to.Group)
        );

    // The counts of what is wired so far can only grow. Where only validity is asked for, the first wiring is enough.
    private bool IsPromising()
    {
        if (numbers is null)
            return best is null;

        return (best?.Vector ?? bound) is not { } than || Vector(numbers).CompareTo(than, order) < 0;
    }

    private ObjectiveVector Vector(int[] placed)
    {
        var values = (int[])placed.Clone();
        values[10] = state.Rewritten(facts);
        (values[11], values[12]) = state.Blocks(rig);
        return new ObjectiveVector { Values = [.. values] };
    }

    private void Finish()
    {
        var show = BruteForcePatch.Of(facts, choices, state);
        var failed = facts.Demands.SelectMany(Failures).ToList();
        var check = new ResultCheck(facts, show, [.. choices.Select(choice => choice.At)], leftOut);
        check.Run(withHolds: false);
        if (
            check.Problems.Count > 0
            || !check.Failed.SequenceEqual(failed)
            || (numbers is not null && (best?.Vector ?? bound) is { } than && check.Vector.CompareTo(than, order) >= 0)
        )
            return;

        best = new BruteForceResult
        {
            Vector = check.Vector,
            Show = show,
            Placements = facts
                .Demands.Where(demand => choices[demand.Index].At is not null)
                .Select(demand => new Placement { Demand = demand.Key, At = choices[demand.Index].At!.Value })
                .ToValueList(),
            Unplaced = failed
                .Select(entry => new UnplacedDemand
                {
                    Demand = entry.Item1.Key,
                    Sink = entry.Item2,
                    Reason = "Left out.",
                })
                .ToValueList(),
        };
    }

    private IEnumerable<(DemandFacts, PointRange?)> Failures(DemandFacts demand)
    {
        var choice = choices[demand.Index];
        if (choice.At is null)
            return [(demand, null)];

        return (demand.Line?.To ?? default).Where(sink => !choice.Sinks.Contains(sink)).Select(sink => (demand, (PointRange?)sink));
    }

    private sealed record Need(List<(PointRange From, PointRange To)> Ways, bool IsUnmoved);
}
