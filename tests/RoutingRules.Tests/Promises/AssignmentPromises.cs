using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Reading;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promises 4, 7 and 8 for assignments, and what every account of one must say.</summary>
public sealed class AssignmentPromises
{
    [Property(MaxTest = Promise.Cases, Replay = Promise.Seed)]
    public Property The_verifier_accepts_every_result_and_counts_the_same_vector() => Promise.Of(AssignCases.OwnBuses(), value => value.Show, value =>
        AssignCases.Verdict(value.Show, AssignCases.Assign(value.Show, value.Options), value.Options));

    [Property(MaxTest = Promise.Cases, Replay = Promise.Seed)]
    public Property The_verifier_accepts_results_without_any_search() => Promise.Of(AssignCases.OwnBuses(), value => value.Show, value =>
    {
        var options = value.Options with { Budget = 0 };
        return AssignCases.Verdict(value.Show, AssignCases.Assign(value.Show, options), options);
    });

    [Property(MaxTest = Promise.Cases, Replay = Promise.Seed)]
    public Property The_check_in_a_result_is_what_checking_its_show_gives() => Promise.Of(AssignCases.Any(), value => value.Show, value =>
    {
        var result = AssignCases.Assign(value.Show, value.Options);
        return Equals(result.Check, Promise.Engine.Check(result.Show)) ? null : "The check in the result is not that of its show.";
    });

    [Property(MaxTest = Promise.Cases, Replay = Promise.Seed)]
    public Property Results_have_no_sink_with_two_sources() => Promise.Of(AssignCases.Any(), value => value.Show, value =>
    {
        var conflicts = Promise.Resolve(AssignCases.Assign(value.Show, value.Options).Show).Conflicts;
        return conflicts.Count == 0 ? null : $"{conflicts.Count} sinks of the result have two sources.";
    });

    [Property(MaxTest = Promise.Cases, Replay = Promise.Seed)]
    public Property Nothing_but_routes_and_streams_changes_and_the_input_not_at_all() => Promise.Of(AssignCases.Any(), value => value.Show, value =>
    {
        var before = AssignCases.Json(value.Show);
        var result = AssignCases.Assign(value.Show, value.Options);
        Promise.Engine.Check(value.Show);
        var patch = value.Show.Patch with { Streams = result.Show.Patch.Streams, Routes = result.Show.Patch.Routes };
        return before != AssignCases.Json(value.Show) ? "The input changed."
            : value.Show with { Patch = patch } != result.Show ? "Something beyond routes and streams changed."
            : ShowReader.Read(ShowWriter.ToUtf8(result.Show)) is not { IsUsable: true, Value: { } read } || read != result.Show ? "The result changes when written and read."
            : null;
    });

    [Property(MaxTest = Promise.Cases, Replay = Promise.Seed)]
    public Property Every_demand_is_accounted_for_once_and_what_is_left_out_has_a_reason() => Promise.Of(AssignCases.Any(), value => value.Show, value =>
    {
        var result = AssignCases.Assign(value.Show, value.Options);
        var keys = AssignCases.Keys(value.Show).ToArray();
        var lines = value.Show.Lines.Select(line => line.Id.Value).ToHashSet();
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
            : result.Unplaced.FirstOrDefault(left => left.Sink is not null && !lines.Contains(left.Demand)) is { } feed ? $"{feed.Demand} is no line but has a sink."
            : null;
    });

    [Property(MaxTest = Promise.Cases, Replay = Promise.Seed)]
    public Property Shows_full_of_mistakes_can_be_assigned_and_checked() => Promise.Of(ShowArbitraries.Messy(), show =>
    {
        var result = AssignCases.Assign(show, AssignCases.Small);
        return Equals(result.Check, Promise.Engine.Check(result.Show)) ? null : "The check in the result is not that of its show.";
    });

    [Property(MaxTest = Promise.Cases, Replay = Promise.Seed)]
    public Property Shows_without_any_meaning_can_be_assigned_and_checked() => Promise.Of(ModelArbitraries.Shows(), show =>
    {
        var result = AssignCases.Assign(show, AssignCases.Small);
        Promise.Engine.Check(result.Show);
        return null;
    });
}
