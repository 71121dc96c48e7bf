using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Lines;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Assignment;

/// <summary>What an assignment writes down beside streams and routes.</summary>
public sealed class ResultDetailsTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static readonly AssignmentOptions Settings = new() { WriteSettings = true };

    /// <summary>A voice that needs phantom power and keys that must not get it, somewhere on the box.</summary>
    private static Show Open(params InputSettings[] inputs) =>
        (
            Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
            {
                Lines = [Anywhere("vox", "desk/channel/1", PhantomNeed.Required), Anywhere("keys", "desk/channel/2", PhantomNeed.Forbidden)],
            }
        ).Inputs(inputs);

    private static Line Anywhere(string id, string to, PhantomNeed need) =>
        Line(id, "box/in/1", to) with
        {
            From = new() { Devices = [new("box")] },
            Phantom = need,
        };

    private static string[] Inputs(Show show) =>
        [.. show.Patch.Inputs.Select(input => $"{input.At} {input.Phantom?.ToString() ?? "-"} {input.GainOwner?.Value ?? "-"}")];

    private static string[] Labels(Show show) => [.. show.Patch.Labels.Select(label => $"{label.At} {label.Text}")];

    [Fact]
    public void Phantom_power_is_switched_as_the_placed_lines_need_it()
    {
        var result = Engine.Assign(Open(), Settings);

        Assert.Equal(["box/in/1 True -", "box/in/2 False -"], Inputs(result.Show));
        Assert.DoesNotContain(result.Check.Findings, finding => finding.Rule.StartsWith("RR60", StringComparison.Ordinal));
        Assert.Empty(Engine.Assign(Open()).Show.Patch.Inputs);
    }

    [Fact]
    public void A_second_run_says_the_same_to_the_byte()
    {
        var once = Engine.Assign(Open(), Settings with { WriteLabels = true }).Show;

        Assert.Equal(once, Engine.Assign(once, Settings with { WriteLabels = true }).Show);
    }

    [Fact]
    public void What_the_document_says_of_an_input_whose_line_stays_is_left_alone()
    {
        var placed = Engine.Assign(Open()).Show;
        var off = placed.Inputs(LineRig.Phantom("box/in/1-8", false));

        Assert.Equal(["box/in/1-8 False -"], Inputs(Engine.Assign(off, Settings).Show));
    }

    [Fact]
    public void Phantom_power_and_gain_go_with_a_line_that_moves()
    {
        var placed = Engine.Assign(Open()).Show.Inputs(LineRig.Phantom("box/in/1", true) with { GainOwner = new("desk") }, LineRig.Phantom("box/in/2", false));
        var moved = Engine.Assign(placed, Settings with { Without = ["box/in/1"] });

        Assert.Equal(["vox"], moved.Moved);
        Assert.Equal(["box/in/2 False -", "box/in/3 True desk"], Inputs(moved.Show));
    }

    [Fact]
    public void What_it_did_without_is_written_down_and_the_next_run_keeps_to_it()
    {
        var rescue = Engine.Assign(Open(), new() { Without = ["box/in/1"], MarkWithout = true }).Show;

        var mark = Assert.Single(rescue.Rig.Unavailable);
        Assert.Equal(("box/in/1", "left out when the show was assigned"), (mark.At.ToString(), mark.Reason));
        Assert.Equal(["box/in/2", "box/in/3"], Engine.Assign(rescue).Placements.Select(placement => placement.At.ToString()));
    }

    [Fact]
    public void Names_become_labels_where_there_is_none()
    {
        var show = Open() with
        {
            Feeds = [FeedTo("mix", FeedRole.Monitor, "desk/aux/1-2", "box") with { Name = "Drummer's wedges" }],
            Patch = new() { Labels = [new() { At = At("desk/channel/2"), Text = "KEYS" }] },
        };

        // The box shows twelve characters.
        Assert.Equal(
            ["desk/channel/2 KEYS", "box/out/1 Drummer's L", "box/out/2 Drummer's R", "box/in/1 vox", "desk/channel/1 vox", "box/in/2 keys"],
            Labels(Engine.Assign(show, new() { WriteLabels = true }).Show)
        );
    }

    [Fact]
    public void A_label_of_what_moved_away_goes()
    {
        var placed = Engine.Assign(Open(), new() { WriteLabels = true }).Show;
        var moved = Engine.Assign(placed, Settings with { Without = ["box/in/1"] }).Show;

        Assert.DoesNotContain("box/in/1 vox", Labels(moved));
        Assert.Contains("box/in/2 keys", Labels(moved));
    }

    [Fact]
    public void A_pin_behind_processing_without_a_cable_is_refused_with_the_place_that_lacks_it()
    {
        var show = Of(("desk", SmallProfiles.Console), ("amp", SmallProfiles.Amplifier)) with
        {
            Feeds = [Feed("pa", FeedRole.Main, "desk/main/1", "amp/out/1")],
        };

        Assert.Equal(
            "amp/out/1 gets its signal through amp/in/1, to which nothing leads that a patch can feed; add the cable, or pin the feed before it.",
            Assert.Single(Engine.Assign(show).Unplaced).Reason
        );
        Assert.Equal(
            "amp/out/9 does not exist; correct it.",
            Assert.Single(Engine.Assign(show with { Feeds = [Feed("pa", FeedRole.Main, "desk/main/1", "amp/out/9")] }).Unplaced).Reason
        );
    }
}
