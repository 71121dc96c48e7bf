using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Testing;
using RoutingRules.Tests.Promises;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>What a loss does, against deleting the thing and tracing what is left.</summary>
[Trait("Speed", "slow")]
public sealed class ImpactPromises
{
    private const int Cases = 150;
    private const int PlanCases = 40;
    private const int PairCases = 60;
    private const int MaxPairs = 40;

    private static readonly ImpactOptions Bare = new()
    {
        Recovery = false,
        SetSize = 0,
        Kinds = [.. Enum.GetValues<LossKind>().Where(kind => kind != LossKind.Point)],
    };

    [Property(MaxTest = Cases)]
    public Property A_loss_silences_what_deleting_it_silences() =>
        Promise.Of(Powered(ShowArbitraries.Valid()), show => Compare(show, Promise.Engine.Impact(show, Bare).Losses));

    [Property(MaxTest = Cases)]
    public Property So_it_does_where_everything_is_delivered() => Promise.Of(Powered(Clean()), show => Compare(show, Promise.Engine.Impact(show, Bare).Losses));

    [Property(MaxTest = PlanCases)]
    public Property Feeds_and_lines_are_lost_where_deleting_parts_them_from_their_source() =>
        Promise.Of(
            Powered(Clean()),
            show =>
            {
                var before = RemovalOracle.Resolve(show);
                foreach (var loss in Promise.Engine.Impact(show, Bare).Losses)
                {
                    var after = RemovalOracle.Resolve(RemovalOracle.Without(show, loss.Lost));
                    foreach (var feed in before.Feeds)
                    {
                        var places = Enumerable.Range(0, feed.Model.To.Count).Select(entry => before.Demands[feed.FirstDemand + entry].Existing).ToList();
                        var lost = places.Count(place => IsLost(before, after, Last(before.Graph, place), feed.Width));
                        var told = loss.Subjects.FirstOrDefault(subject => subject.Role is not null && subject.Subject == feed.Model.Id.Value);
                        if ((told?.LostAt.Count ?? 0) != lost || (told is not null && (told.Fate == LossFate.Partly) != (lost < places.Count)))
                        {
                            return $"{loss.Lost[0]}: feed {feed.Model.Id} is lost at {lost} of {places.Count} places, told {told}.";
                        }
                    }

                    foreach (var line in before.Lines)
                    {
                        var lost = line.Sinks.Count(sink => IsLost(before, after, sink, line.Width));
                        var told = loss.Subjects.FirstOrDefault(subject => subject.Role is null && subject.Subject == line.Model.Id.Value);
                        if ((told?.LostAt.Count ?? 0) != lost)
                        {
                            return $"{loss.Lost[0]}: line {line.Model.Id} is lost at {lost} sinks, told {told}.";
                        }
                    }
                }

                return null;
            }
        );

    [Property(MaxTest = PlanCases)]
    public Property The_smallest_sets_are_those_found_by_trying_every_set() =>
        Promise.Of(
            Powered(Clean()),
            show =>
            {
                var answer = Promise.Engine.Impact(show, Bare with { SetSize = 2 });
                var things = answer.Losses.Select(loss => loss.Lost[0]).ToList();
                var before = RemovalOracle.Resolve(show);
                var sets = things
                    .Select(thing => new[] { thing })
                    .Concat(things.SelectMany((one, i) => things.Skip(i + 1).Select(other => new[] { one, other })))
                    .ToList();
                var broken = sets.ConvertAll(set => (Set: set, After: RemovalOracle.Resolve(RemovalOracle.Without(show, set))));
                foreach (var feed in before.Feeds.Where(feed => answer.FailureSets.Any(sets => sets.Feed == feed.Model.Id.Value)))
                {
                    var places = Enumerable
                        .Range(0, feed.Model.To.Count)
                        .Select(entry => Last(before.Graph, before.Demands[feed.FirstDemand + entry].Existing))
                        .ToList();
                    var silencing = broken
                        .Where(pair => places.TrueForAll(place => IsLost(before, pair.After, place, feed.Width)))
                        .Select(pair => pair.Set)
                        .ToList();
                    var smallest = silencing
                        .Where(set => set.Length == 1 || !silencing.Exists(one => one.Length == 1 && set.Contains(one[0])))
                        .Select(set => string.Join('+', set.Select(thing => $"{thing.Kind} {thing.Id}").Order(StringComparer.Ordinal)))
                        .Order(StringComparer.Ordinal);
                    var told = answer.FailureSets.First(sets => sets.Feed == feed.Model.Id.Value);
                    var claimed = told
                        .Sets.Select(set => string.Join('+', set.Select(thing => $"{thing.Kind} {thing.Id}").Order(StringComparer.Ordinal)))
                        .Order(StringComparer.Ordinal)
                        .ToList();
                    var found = smallest.ToList();
                    if (found.Count != claimed.Count + told.Omitted || claimed.Except(found).Any())
                    {
                        return $"Feed {feed.Model.Id}: {string.Join(", ", claimed)} and {told.Omitted} more, but {string.Join(", ", found)}.";
                    }
                }

                return null;
            }
        );

    [Property(MaxTest = PlanCases)]
    public Property The_steps_of_a_plan_bring_back_what_it_says_and_disturb_nothing() =>
        Promise.Of(
            Powered(Clean()),
            show =>
            {
                var before = RemovalOracle.Resolve(show);
                foreach (var moves in new[] { 1, 8 })
                {
                    foreach (
                        var loss in Promise
                            .Engine.Impact(show, Bare with { Recovery = true, Moves = moves, Kinds = [LossKind.Device, LossKind.Link, LossKind.Power] })
                            .Losses
                    )
                    {
                        if (
                            loss.Plan is { } plan
                            && (plan.Moves > moves ? $"{plan.Moves} moves of {moves}." : PlanSimulation.Broken(show, before, loss, plan)) is { } problem
                        )
                        {
                            return $"{loss.Lost[0]}: {problem} Steps: {string.Join("; ", plan.Steps)}";
                        }
                    }
                }

                return null;
            }
        );

    [Property(MaxTest = PairCases)]
    public Property So_do_the_steps_of_a_plan_for_two_losses() =>
        Promise.Of(
            Powered(Clean()),
            show =>
            {
                var before = RemovalOracle.Resolve(show);
                foreach (
                    var loss in Promise
                        .Engine.Impact(show, Bare with { Pairs = true, Recovery = true, Kinds = [LossKind.Device, LossKind.Link] })
                        .Pairs.Take(MaxPairs)
                )
                {
                    if (
                        loss.Plan is { } plan
                        && (plan.Moves > new ImpactOptions().Moves ? $"{plan.Moves} moves." : PlanSimulation.Broken(show, before, loss, plan)) is { } problem
                    )
                    {
                        return $"{loss.Lost[0]} and {loss.Lost[1]}: {problem} Steps: {string.Join("; ", plan.Steps)}";
                    }
                }

                return null;
            }
        );

    private static string? Compare(Show show, ValueList<LossImpact> losses)
    {
        var before = RemovalOracle.Resolve(show);
        foreach (var loss in losses)
        {
            var after = RemovalOracle.Resolve(RemovalOracle.Without(show, loss.Lost));
            foreach (var (told, kind) in new[] { (loss.Outputs, PortKind.Output), (loss.Channels, PortKind.Sink) })
            {
                var expected = RemovalOracle.Silenced(before, after, kind).ToList();
                var claimed = told.SelectMany(run => Enumerable.Range(0, run.Width).Select(position => run[position])).ToList();
                if (!expected.SequenceEqual(claimed))
                {
                    return $"{loss.Lost[0]} silences {string.Join(", ", expected)}, told {string.Join(", ", claimed)}.";
                }
            }
        }

        return null;
    }

    private static PointIndex Last(SignalGraph graph, PointIndex at)
    {
        while (graph.Fed(at) is { Length: 1 } fed)
        {
            at = new PointIndex(fed[0]);
        }

        return at;
    }

    private static bool IsLost(ResolvedShow before, ResolvedShow after, PointIndex at, int width) =>
        Enumerable
            .Range(0, width)
            .Any(position =>
                before.Graph.Address(at + position) is var point && RemovalOracle.Source(before, after, point) != RemovalOracle.Source(before, before, point)
            );

    private static Arbitrary<Show> Clean() => Arb.From(ShowArbitraries.Clean().Generator.Select(clean => clean.Show));

    /// <summary>Devices on one supply, on two, on one of their own or on none.</summary>
    private static Arbitrary<Show> Powered(Arbitrary<Show> shows) =>
        Arb.From(
            from show in shows.Generator
            from plugs in Gen.Choose(0, 5).ArrayOf(12)
            select show with
            {
                Feeds = show.Feeds.Select((feed, i) => feed with { Priority = (Priority)(plugs[i % plugs.Length] % 4) }).ToValueList(),
                Rig = show.Rig with
                {
                    Devices = show
                        .Rig.Devices.Select(
                            (device, i) =>
                                device with
                                {
                                    Power = plugs[i % plugs.Length] switch
                                    {
                                        0 => [],
                                        1 => [new("a")],
                                        2 => [new("b")],
                                        3 => [new("a"), new("b")],
                                        _ => [new($"own-{i}")],
                                    },
                                }
                        )
                        .ToValueList(),
                },
            }
        );
}
