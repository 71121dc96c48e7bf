using System.Text;
using System.Text.Json;
using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Reports;

public sealed class AssignmentTextReportTests
{
    /// <summary>Made up by hand: what a report says, not what an assignment would be.</summary>
    private static AssignmentResult Result { get; } =
        new()
        {
            Show = SmallShow.Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
            {
                Title = "Barn dance",
                Feeds =
                [
                    SmallShow.FeedTo("mon", FeedRole.Monitor, "desk/aux/1", "box", "box") with
                    {
                        Name = "Monitor",
                    },
                    SmallShow.Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box/out/3-4"),
                    SmallShow.FeedTo("late", FeedRole.Monitor, "desk/aux/7", "box") with
                    {
                        Name = "Late \u001b[2J one",
                    },
                ],
                Lines = [SmallShow.Line("voice", "box/in/2", "desk/channel/1", "desk/channel/2")],
            },
            Status = AssignmentStatus.Feasible,
            ProvenNumbers = 7,
            Objective = new() { Values = [0, 0, 1, 0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9] },
            Placements =
            [
                new()
                {
                    Demand = "mon/1",
                    At = SmallShow.At("box/out/10"),
                    IsKept = true,
                },
                new() { Demand = "mon/2", At = SmallShow.At("box/out/2") },
                new()
                {
                    Demand = "ears/1",
                    At = SmallShow.At("box/out/3-4"),
                    IsPinned = true,
                    IsKept = true,
                },
                new() { Demand = "voice", At = SmallShow.At("box/in/2") },
            ],
            Unplaced =
            [
                new() { Demand = "late/1", Reason = "All outputs are taken." },
                new()
                {
                    Demand = "voice",
                    Sink = SmallShow.At("desk/channel/2"),
                    Reason = "No slot is left.",
                },
            ],
            Moved = ["mon/2"],
            RemovedStreams = [new("old")],
            Silenced = [new(new("box"), new("out"), 8)],
            Cleared = [new(new("desk"), new("channel"), 5)],
            Notes = ["A remark."],
            Check = new()
            {
                Findings = default,
                Rules = default,
                Undecided = default,
                WasRead = true,
            },
        };

    private static string Write(AssignmentResult result, ValueList<ObjectiveLevel> order = default)
    {
        using var output = new StringWriter { NewLine = "\n" };
        AssignmentTextReport.Write(result, output, order);
        return output.ToString();
    }

    [Fact]
    public void The_report_names_what_is_left_out_first_and_then_the_places_by_device() =>
        Assert.Equal(
            """
            Barn dance: 2 feeds or lines not placed; 7 of 14 numbers are proven to be the smallest possible.

            Not placed
              Late \u001b[2J one [late/1]: All outputs are taken.
              voice [voice] does not reach desk/channel/2: No slot is left.

            Moved: take the cable of each to its new place
              Monitor (2 of 2) [mon/2]: now box/out/2

            box
              in/2     voice             to desk/channel/1, desk/channel/2  new
              out/2    Monitor (2 of 2)  from desk/aux/1                    new
              out/3-4  ears              from desk/aux/3-4                  fixed by the document
              out/10   Monitor (1 of 2)  from desk/aux/1                    as before

            Outputs that sounded before and are silent now
              box/out/8

            Channels cleared because no line with a place names them
              desk/channel/5

            Streams taken away
              old

            Remarks
              A remark.

            How good it is: smaller is better, earlier lines weigh more than all later ones
              Critical feeds and lines left out                          0  proven
              High-priority feeds and lines left out                     0  proven
              Normal feeds and lines left out                            1  proven
              Low-priority feeds and lines left out                      0  proven
              Held feeds and lines moved                                 0  proven
              Other feeds and lines moved                                1  proven
              Pairs of a set on different devices and different numbers  2  proven
              Devices more than one that groups are spread over          3
              Steps away from preferred numbers                          4
              Pairs against the order of the list                        5
              Slots, blocks and routes written anew under what stays     6
              Transmit blocks used                                       7
              Receive blocks used                                        8
              Sum of all numbers                                         9

            """,
            Write(Result)
        );

    [Fact]
    public void Another_order_of_aims_is_kept()
    {
        ObjectiveLevel[] reversed = [.. Enum.GetValues<ObjectiveLevel>().Reverse()];
        var lines = Write(Result, reversed.ToValueList()).Split('\n');
        var first = Array.FindIndex(lines, line => line.StartsWith("  Other feeds and lines moved", StringComparison.Ordinal)) + 1;

        Assert.Matches("^  Sum of all numbers +9  proven$", lines[first]);
        Assert.Matches("^  Receive blocks used +8$", lines[first + 1]);
    }

    [Fact]
    public void Contradicting_pins_are_named_and_no_numbers_given()
    {
        var text = Write(
            Result with
            {
                Status = AssignmentStatus.PinsContradict,
                Objective = null,
                ProvenNumbers = 0,
                Contradictions =
                [
                    ["ears/1", "mon/1"],
                    ["voice"],
                ],
                Unplaced = default,
            }
        );

        Assert.StartsWith("Barn dance: the fixed places contradict each other; of the rest, everything is placed.\n", text, StringComparison.Ordinal);
        Assert.Contains(
            "These fixed places cannot hold together; free one of each line\n  ears [ears/1] with Monitor (1 of 2) [mon/1]\n  voice [voice]\n",
            text,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain("How good", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(3, 0)]
    [InlineData(4, 1)]
    [InlineData(5, 1)]
    [InlineData(6, 2)]
    [InlineData(7, 3)]
    [InlineData(14, 10)]
    public void The_proven_level_in_json_counts_whole_levels(int numbers, int level)
    {
        using var output = new MemoryStream();
        using (var report = new JsonReport(output))
        {
            report.Add(Result with { ProvenNumbers = numbers }, default);
            report.Finish();
        }

        // Ten levels: four numbers, two numbers, then eight levels of one.
        var assignment = JsonDocument.Parse(Encoding.UTF8.GetString(output.ToArray())).RootElement.GetProperty("assignment");
        Assert.Equal(level, assignment.GetProperty("provenLevel").GetInt32());
        Assert.Equal([0, 0, 1, 0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9], assignment.GetProperty("objective").EnumerateArray().Select(number => number.GetInt32()));
        Assert.Equal("desk/channel/2", assignment.GetProperty("unplaced")[1].GetProperty("sink").GetString());
    }

    [Fact]
    public void A_configuration_becomes_options_with_every_aim_by_its_name()
    {
        var aims = Enum.GetValues<RoutingRules.Configuration.AssignmentAim>();
        var options = new RoutingRules.Configuration.AssignmentConfig
        {
            Spares = 2,
            Headroom = 3,
            LatencyMilliseconds = 8,
            InEarLatencyMilliseconds = 5,
            KeepUnlisted = true,
            Budget = 4,
            Order = aims.ToValueList(),
        }.ToOptions();

        Assert.Equal(aims.Select(aim => aim.ToString()), options.Order.Select(level => level.ToString()));
        Assert.Equal((2, 3, true, 4), (options.Spares, options.Headroom, options.KeepUnlisted, options.Budget));
        Assert.Equal((8, 5), (options.LatencyMilliseconds, options.InEarLatencyMilliseconds));
        Assert.Equal(new AssignmentOptions(), new RoutingRules.Configuration.AssignmentConfig().ToOptions());
    }

    [Theory]
    [InlineData("RR5002")]
    [InlineData("link-reservation-exceeded")]
    [InlineData("RR5*")]
    public void Links_are_filled_as_far_as_the_rule_about_reservations_lets_them(string rule)
    {
        var config = new RoutingRules.Configuration.EngineConfig
        {
            Rules =
            [
                new() { Rule = rule, Options = [new() { Name = "maximumPercent", Value = 40 }] },
                new()
                {
                    Rule = rule,
                    Enabled = false,
                    Options = [new() { Name = "maximumPercent", Value = 60.5 }],
                },
            ],
            Assignment = new() { Spares = 2 },
        };

        Assert.Equal((60.5, 2), (config.ToAssignmentOptions().LinkPercent, config.ToAssignmentOptions().Spares));
        Assert.Equal(new AssignmentOptions(), new RoutingRules.Configuration.EngineConfig().ToAssignmentOptions());
    }
}
