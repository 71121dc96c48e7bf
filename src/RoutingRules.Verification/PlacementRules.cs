using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>The hard rules that placements alone decide, whatever the patch.</summary>
internal static class PlacementRules
{
    /// <summary>What is wrong with a set of placements.</summary>
    /// <param name="facts">The input.</param>
    /// <param name="at">For each demand its run, null when it has none.</param>
    public static IEnumerable<string> Problems(AssignmentFacts facts, IReadOnlyList<PointRange?> at) =>
        Places(facts, at).Concat(Spares(facts, at)).Concat(Spread(facts, at)).Concat(Separation(facts, at));

    /// <summary>Pairs of entries that must stay apart, with the way they must.</summary>
    public static List<(DemandFacts One, DemandFacts Other, SeparationBy By)> Separated(AssignmentFacts facts)
    {
        var pairs = new List<(DemandFacts, DemandFacts, SeparationBy)>();
        foreach (var one in facts.Demands)
        {
            foreach (var separation in one.Feed?.SeparateFrom ?? default)
            {
                var other = facts.Demands.FirstOrDefault(demand => demand.Feed?.Id == separation.Feed && demand.Entry == one.Entry);
                if (other is not null && other != one)
                    pairs.Add((one, other, separation.By));
            }
        }

        return pairs;
    }

    private static IEnumerable<string> Places(AssignmentFacts facts, IReadOnlyList<PointRange?> at)
    {
        var owners = new Dictionary<Point, DemandFacts>();
        var named = ExistingNeighbours.Named(
            facts.Demands.Where(demand =>
                !facts.IsForbidden(
                    demand,
                    !demand.IsPinned ? null
                        : demand.Runs is [var pin, ..] ? pin
                        : default(PointRange)
                )
            ),
            facts.Rig
        );
        foreach (var demand in facts.Demands)
        {
            if (at[demand.Index] is not { } run)
                continue;

            if (!AssignmentFacts.Allows(demand, run))
                yield return $"{demand.Key} stands at {run}, which is not among the points it may use.";

            foreach (var point in demand.Occupies(run))
            {
                // A split line is plugged at all its points; the patch uses those it may.
                if (!demand.IsSplit && facts.Rig.IsExcluded(point))
                    yield return $"{demand.Key} stands at {point}, which must not be used.";
                else if (!demand.IsPinned && !facts.Rig.IsUsable(point))
                    yield return $"{demand.Key} stands at {point}, which is {(facts.Rig.IsDead(point) ? "dead" : "reserved")}; only a pin may do that.";

                if (!demand.IsPinned && named.Contains(point))
                    yield return $"{demand.Key} stands at {point}, which the show gives to another demand.";

                if (!demand.IsPinned && PrivacyFacts.IsPrivate(demand) && facts.Privacy.Plays(point))
                    yield return $"{demand.Key} stands at {point}, from where loudspeakers play it; only a pin may do that.";

                if (!owners.TryAdd(point, demand))
                    yield return $"{demand.Key} and {owners[point].Key} both stand at {point}; give one of them another point.";
            }
        }
    }

    // Pins and demands that stay may use up a group; whatever is put there anew leaves the spares free.
    private static IEnumerable<string> Spares(AssignmentFacts facts, IReadOnlyList<PointRange?> at)
    {
        if (facts.Options.Spares == 0)
            yield break;

        var taken = new HashSet<Point>();
        var groups = new List<GroupFacts>();
        foreach (var demand in facts.Demands)
        {
            if (at[demand.Index] is not { } run)
                continue;

            taken.UnionWith(demand.Occupies(run));
            if (!demand.IsPinned && demand.Existing != run && facts.Rig.Group(run) is { Kind: PortKind.Output } group && !groups.Contains(group))
                groups.Add(group);
        }

        foreach (var group in groups)
        {
            var free = Enumerable
                .Range(1, group.Count)
                .Select(group.At)
                .Count(point => facts.Rig.IsUsable(point) && !facts.Rig.IsExcluded(point) && !taken.Contains(point) && !facts.IsLineOutput(point));
            if (free < facts.Options.Spares)
                yield return $"{group.Device.Model.Id}/{group.Model.Id} keeps {free} spare outputs where {facts.Options.Spares} are asked for.";
        }
    }

    private static IEnumerable<string> Spread(AssignmentFacts facts, IReadOnlyList<PointRange?> at)
    {
        var seen = new Dictionary<(Feed, Id<Device>), DemandFacts>();
        foreach (var demand in facts.Demands)
        {
            if (demand.Feed is { Spread: true } feed && at[demand.Index] is { } run && !seen.TryAdd((feed, run.Device), demand))
                yield return $"{demand.Key} and {seen[(feed, run.Device)].Key} share {run.Device}, but the feed asks to be spread.";
        }
    }

    private static IEnumerable<string> Separation(AssignmentFacts facts, IReadOnlyList<PointRange?> at)
    {
        foreach (var (one, other, by) in Separated(facts))
        {
            if (at[one.Index] is not { } left || at[other.Index] is not { } right)
                continue;

            if (by == SeparationBy.Device && left.Device == right.Device)
                yield return $"{one.Key} and {other.Key} share the device {left.Device} and must not.";

            if (by == SeparationBy.Power && Power(facts, left).Intersect(Power(facts, right)).Any())
                yield return $"{one.Key} and {other.Key} share a power supply and must not.";
        }
    }

    private static ValueList<Id<PowerSource>> Power(AssignmentFacts facts, PointRange run) => facts.Rig.Device(run.Device)?.Model.Power ?? default;
}
