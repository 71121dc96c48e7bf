using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Assignment;
using RoutingRules.Documents;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promises 4, 7 and 8 for assignments, and what every account of one must say.</summary>
[Trait("Speed", "slow")]
public sealed class AssignmentPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property The_verifier_accepts_every_result_and_counts_the_same_vector() =>
        Promise.Of(
            AssignCases.OwnBuses(),
            value => value.Show,
            value => AssignCases.Verdict(value.Show, AssignCases.Assign(value.Show, value.Options), value.Options)
        );

    [Property(MaxTest = Promise.Cases)]
    public Property The_verifier_accepts_results_with_pins_inserts_blocks_and_things_left_out() =>
        Promise.Of(
            AssignCases.Any(),
            value => value.Show,
            value => AssignCases.Verdict(value.Show, AssignCases.Assign(value.Show, value.Options), value.Options)
        );

    /// <summary>
    /// A receiver nobody mentions beside the return of an insert into which nothing goes, a place from which a stream went on, and a channel that is cleared
    /// with its block.
    /// </summary>
    [Theory]
    [InlineData(500951)]
    [InlineData(2000366)]
    [InlineData(2000955)]
    [InlineData(3000553)]
    public void No_result_is_thrown_away(int seed)
    {
        var made = MadeInstances.Make(seed);
        Assert.Null(AssignCases.Verdict(made.Show, AssignCases.Assign(made.Show, made.Options), made.Options));
    }

    [Property(MaxTest = Promise.Cases)]
    public Property The_verifier_accepts_results_without_any_search() =>
        Promise.Of(
            AssignCases.OwnBuses(),
            value => value.Show,
            value =>
            {
                var options = value.Options with { Budget = 0 };
                return AssignCases.Verdict(value.Show, AssignCases.Assign(value.Show, options), options);
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property A_cancelled_search_still_gives_a_valid_result() =>
        Promise.Of(
            AssignCases.OwnBuses(),
            value => value.Show,
            value => AssignCases.Verdict(value.Show, AssignCases.Assign(value.Show, value.Options, new CancellationToken(true)), value.Options)
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Results_are_checked_whole_and_accounted_for_and_the_input_stays_what_it_was() =>
        Promise.Of(
            AssignCases.Any(),
            value => value.Show,
            value =>
            {
                var before = AssignCases.Json(value.Show);
                var result = AssignCases.Assign(value.Show, value.Options);
                return before != AssignCases.Json(value.Show)
                    ? "The input changed."
                    : StaleCheck(result) ?? Conflict(result) ?? ForeignChange(value.Show, result) ?? WrongAccount(value.Show, result);
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Shows_full_of_mistakes_can_be_assigned_and_checked() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var result = AssignCases.Assign(show, AssignCases.Small);
                return Equals(result.Check, Promise.Engine.Check(result.Show)) ? null : "The check in the result is not that of its show.";
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property Shows_without_any_meaning_can_be_assigned_and_checked() =>
        Promise.Of(
            ModelArbitraries.Shows(),
            show =>
            {
                var result = AssignCases.Assign(show, AssignCases.Small);
                Promise.Engine.Check(result.Show);
                return null;
            }
        );

    private static string? StaleCheck(AssignmentResult result)
    {
        return Equals(result.Check, Promise.Engine.Check(result.Show)) ? null : "The check in the result is not that of its show.";
    }

    private static string? Conflict(AssignmentResult result)
    {
        var conflicts = Promise.Resolve(result.Show).Conflicts;
        return conflicts.Count == 0 ? null : $"{conflicts.Count} sinks of the result have two sources.";
    }

    private static string? ForeignChange(Show show, AssignmentResult result)
    {
        var patch = show.Patch with { Streams = result.Show.Patch.Streams, Routes = result.Show.Patch.Routes };
        return show with { Patch = patch } != result.Show ? "Something beyond routes and streams changed."
            : ShowReader.Read(ShowWriter.ToUtf8(result.Show)) is not { IsUsable: true, Value: { } read } || read != result.Show
                ? "The result changes when written and read."
            : null;
    }

    private static string? WrongAccount(Show show, AssignmentResult result)
    {
        var keys = AssignCases.Keys(show).ToArray();
        var lines = show.Lines.Select(line => line.Id.Value).ToHashSet();
        foreach (var key in keys)
        {
            var placed = result.Placements.Count(placement => placement.Demand == key);
            var unplaced = result.Unplaced.Count(left => left.Demand == key && left.Sink is null);
            if (placed + unplaced != 1)
            {
                return $"{key} is placed {placed} times and unplaced {unplaced} times.";
            }
        }

        return result.Placements.FirstOrDefault(placement => !keys.Contains(placement.Demand)) is { } stranger ? $"{stranger.Demand} is no demand."
            : result.Unplaced.FirstOrDefault(left => string.IsNullOrWhiteSpace(left.Reason)) is { } silent ? $"{silent.Demand} is left out without a reason."
            : result.Unplaced.FirstOrDefault(left => left.Sink is not null && !lines.Contains(left.Demand)) is { } feed
                ? $"{feed.Demand} is no line but has a sink."
            : null;
    }
}
