using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Tests.Verification;

public class AccountCheckTests
{
    private static readonly Scene Two = Scene.Paper(1).IsValid();

    [Fact]
    public void A_demand_that_does_not_exist_cannot_be_placed() =>
        Two.Place("ghost/1", "box-r/out/3").ComplainsOnly("ghost/1 is placed, but the show has no such demand.");

    [Fact]
    public void A_demand_is_placed_once() => (Two with { Placements = [.. Two.Placements, Two.Placements[2]] }).ComplainsOnly("wedge-2/1 is placed twice.");

    [Fact]
    public void Placements_stand_in_demand_order() =>
        (Two with { Placements = [Two.Placements[1], Two.Placements[0], Two.Placements[2]] }).ComplainsOnly(
            "wedge-1/1 stands out of order in the list of placements."
        );

    [Fact]
    public void A_demand_that_does_not_exist_cannot_be_unplaced() =>
        (Two with { Unplaced = [new UnplacedDemand { Demand = "ghost/1", Reason = "None." }] }).ComplainsOnly(
            "ghost/1 is said to be unplaced, but the show has no such demand."
        );

    [Fact]
    public void A_demand_dropped_in_silence_is_missed() =>
        (Two with { Placements = [Two.Placements[0], Two.Placements[1]] }).Complains(
            "wedge-2/1 is not delivered and is missing from the list of unplaced demands."
        );

    [Fact]
    public void A_demand_is_not_both_delivered_and_unplaced() =>
        (Two with { Unplaced = [new UnplacedDemand { Demand = "wedge-2/1", Reason = "None." }] }).ComplainsOnly(
            "wedge-2/1 is said to be unplaced, but is delivered or listed twice."
        );

    [Fact]
    public void A_sink_that_a_line_misses_is_named()
    {
        var lines = Scene.Paper(10).IsValid();

        (lines with { Unplaced = [] }).ComplainsOnly("vocal at desk-b/channel/2 is not delivered and is missing from the list of unplaced demands.");
        (lines with { Unplaced = [lines.Unplaced[0] with { Sink = PointRange.Parse("desk/channel/3") }] }).Complains(
            "vocal at desk/channel/3 is said to be unplaced, but is delivered"
        );
    }

    [Fact]
    public void Only_the_patch_may_change()
    {
        (Two with { Result = Two.Result with { Title = "Another" } }).Complains("The result differs from the input in more than its patch");
        Two.WithPatch(patch => patch with { Labels = [new PointLabel { At = PointRange.Parse("box-r/out/1"), Text = "W1" }] })
            .Complains("The result changes inputs, labels or extensions");
    }

    [Fact]
    public void A_pin_that_is_not_placed_needs_a_contradiction()
    {
        var pins = Scene.Paper(14).IsValid();

        (pins with { Contradiction = [] }).Complains("pin-a/1 is pinned to box/out/2 and is not placed");
        pins.Place("pin-a/1", "box/out/2").Complains("pin-a/1 is placed although its pin is said to contradict others.");
    }

    [Fact]
    public void A_pin_on_an_excluded_box_is_left_out_without_a_contradiction()
    {
        var pins = Scene.Paper(14);
        var without = pins with
        {
            Contradiction = [],
            Options = new AssignmentOptions { Without = ["box"] },
            Placements = [],
            Unplaced = [.. pins.Show.Feeds.Select(feed => new UnplacedDemand { Demand = $"{feed.Id}/1", Reason = "Box failed." })],
        };

        without.WithPatch(patch => patch with { Streams = [], Routes = [] }).IsValid();
    }
}
