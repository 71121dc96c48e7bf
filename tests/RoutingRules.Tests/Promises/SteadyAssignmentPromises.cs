using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Small change in, small change out: names do not matter, bystanders do not matter, additions move nobody.</summary>
[Trait("Speed", "slow")]
public sealed class SteadyAssignmentPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property Renaming_devices_zones_feeds_and_lines_does_not_change_the_vector() =>
        Promise.Of(
            ShowArbitraries.ToAssign(),
            show =>
            {
                var before = AssignCases.Assign(show, AssignCases.Small).Objective;
                var after = AssignCases.Assign(Renaming.Rename(show), AssignCases.Small).Objective;
                return before?.ToString() == after?.ToString() ? null : $"The vector was {before} and is {after} under other names.";
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property A_device_nobody_names_does_not_change_what_people_read_and_plug() =>
        Promise.Of(
            ShowArbitraries.ToAssign(),
            show =>
            {
                var bystander = SmallProfiles.Box with { Id = new("made/bystander") };
                var more = show with
                {
                    Rig = show.Rig with
                    {
                        Devices = [.. show.Rig.Devices.AsSpan(), new Device { Id = new("bystander"), Profile = bystander.Id }],
                        Profiles = [.. show.Rig.Profiles.AsSpan(), bystander],
                    },
                };
                var before = FirstSix(AssignCases.Assign(show, AssignCases.Small));
                var after = FirstSix(AssignCases.Assign(more, AssignCases.Small));
                return before == after ? null : $"Levels 1 to 6 were {before} and are {after}.";
            }
        );

    /// <summary>The late feed has a bus of its own: one that shares its bus with others could claim that their outputs serve it.</summary>
    [Property(MaxTest = Promise.Cases)]
    public Property A_feed_more_moves_nothing_that_is_held() =>
        Promise.Of(
            ShowArbitraries.ToAssign(),
            show =>
            {
                var settled = AssignCases.Assign(show, AssignCases.Small);
                var held = settled.Show with
                {
                    Feeds = [.. settled.Show.Feeds.Select(feed => feed with { Hold = true })],
                    Lines = [.. settled.Show.Lines.Select(line => line with { Hold = true })],
                };
                if (settled.Status == AssignmentStatus.PinsContradict || FreeBus(held) is not { } bus)
                {
                    return null;
                }

                var before = AssignCases.Assign(held, AssignCases.Small);
                var late = new Feed
                {
                    Id = new("late"),
                    Source = bus,
                    To = [new() { Devices = held.Rig.Devices.Select(device => device.Id).ToValueList() }],
                };
                var after = AssignCases.Assign(held with { Feeds = [.. held.Feeds.AsSpan(), late] }, AssignCases.Small);
                var heldKeys = Promise
                    .Engine.Resolve(held)
                    .Demands.Where(demand => demand.IsHeld)
                    .Select(demand => demand.Key)
                    .ToHashSet(StringComparer.Ordinal);
                return
                    before.Placements.FirstOrDefault(placement =>
                        placement.IsKept
                        && heldKeys.Contains(placement.Demand)
                        && !after.Placements.Any(other => other.Demand == placement.Demand && other.At == placement.At)
                    )
                        is { } moved
                    ? $"{moved.Demand} was held at {moved.At}; a late feed moved it. {string.Join(" ", after.Notes)} "
                        + $"{AssignCases.Verdict(held with { Feeds = [.. held.Feeds.AsSpan(), late] }, after, AssignCases.Small)}"
                    : null;
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property A_show_wired_by_hand_stays_as_it_is() =>
        Promise.Of(
            ShowArbitraries.Clean(),
            clean => clean.Show,
            clean =>
            {
                var result = AssignCases.Assign(clean.Show, AssignCases.Small);
                var expected = clean.Placements.Select(placement => $"{placement.Demand} at {placement.At}");
                var actual = result.Placements.Select(placement => $"{placement.Demand} at {placement.At}");
                var (before, after) = (new NaiveTracer(clean.Show), new NaiveTracer(result.Show));
                return !expected.SequenceEqual(actual) ? $"Places were {string.Join(", ", expected)} and are {string.Join(", ", actual)}."
                    : !result.Moved.IsEmpty || !result.Unplaced.IsEmpty ? "Something moved or was left out."
                    : before.Points(PortKind.Output, PortKind.Sink).FirstOrDefault(point => before.Source(point) != after.Source(point))
                        is { Number: > 0 } changed
                        ? $"{changed} carries something else."
                    : null;
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property A_show_that_can_be_wired_by_hand_is_wired_in_full_and_without_errors() =>
        Promise.Of(
            ShowArbitraries.Clean(),
            clean => clean.Show,
            clean =>
            {
                var unwired = clean.Show with { Patch = clean.Show.Patch with { Streams = [], Routes = [] } };
                var result = AssignCases.Assign(unwired, AssignCases.Small);
                return !result.Unplaced.IsEmpty ? $"{result.Unplaced[0].Demand} is left out: {result.Unplaced[0].Reason}"
                    : result.Check.Findings.FirstOrDefault(finding => finding.Severity == RoutingRules.Rules.Severity.Error) is { } error
                        ? $"{error.Rule} {error.Message}"
                    : AssignCases.Verdict(unwired, result, AssignCases.Small);
            }
        );

    private static PointRange? FreeBus(Show show)
    {
        var used = show
            .Feeds.SelectMany(feed => Enumerable.Range(0, feed.Source.Width).Select(position => feed.Source[position]))
            .Concat(show.Lines.Where(line => line.From.Source is not null).Select(line => line.From.Source!.Value[0]))
            .ToHashSet();
        return new NaiveTracer(show).Points(PortKind.Source).FirstOrDefault(point => !used.Contains(point)) is { Number: > 0 } free
            ? new PointRange(free.Device, free.Group, free.Number, free.Number)
            : null;
    }

    private static string? FirstSix(AssignmentResult result) => result.Objective is { } vector ? string.Join(' ', vector.Values.Take(10)) : null;
}
