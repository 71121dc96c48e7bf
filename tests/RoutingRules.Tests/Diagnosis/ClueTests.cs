using RoutingRules.Diagnosis;
using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>Slips in shows that leave places open, where only labels, settings and the other part of a set say what belongs where.</summary>
public sealed class ClueTests
{
    private static readonly Show Rig = Of(
        ("desk", SmallProfiles.Console),
        ("box", SmallProfiles.FreeBox),
        ("box-2", SmallProfiles.FreeBox),
        ("amp", SmallProfiles.Amplifier),
        ("amp-2", SmallProfiles.Amplifier)
    );

    /// <summary>Two monitors anywhere on a box, labelled at both ends.</summary>
    private static readonly Show Monitors = Rig with
    {
        Feeds = [FeedTo("one", FeedRole.Monitor, "desk/aux/5", "box"), FeedTo("two", FeedRole.Monitor, "desk/aux/6", "box")],
        Patch = new Patch
        {
            Routes = [Route("desk/aux/5-6", "desk/transmit/1-2"), Route("box/receive/1-2", "box/out/1-2")],
            Streams = [Stream("s", "desk/transmit/1-4", "box/receive/1-4")],
            Labels = [Label("desk/aux/5", "ONE"), Label("desk/aux/6", "TWO"), Label("box/out/1", "ONE"), Label("box/out/2", "TWO")],
        },
    };

    /// <summary>A microphone and a direct box anywhere on a box, of which only the direct box gets phantom power.</summary>
    private static readonly Show Lines = Rig with
    {
        Lines =
        [
            Line("vocal", "box/in/1", "desk/channel/1") with
            {
                From = new() { Devices = [new("box")] },
            },
            Line("direct", "box/in/2", "desk/channel/2") with
            {
                From = new() { Devices = [new("box")] },
                Phantom = PhantomNeed.Required,
            },
        ],
        Patch = new Patch
        {
            Routes = [Route("box/in/1-2", "box/transmit/1-2"), Route("desk/receive/1-2", "desk/channel/1-2")],
            Streams = [Stream("s", "box/transmit/1-4", "desk/receive/1-4")],
            Inputs = [new() { At = At("box/in/1"), Phantom = false }, new() { At = At("box/in/2"), Phantom = true }],
        },
    };

    private static PointLabel Label(string at, string text) => new() { At = At(at), Text = text };

    private static Cause Only(Show show)
    {
        var resolved = CleanShows.Engine.Resolve(show);
        return Assert.Single(CleanShows.Engine.Diagnose(resolved, CleanShows.Engine.Check(resolved)));
    }

    [Fact]
    public void The_shows_without_a_slip_have_no_cause()
    {
        foreach (var show in new[] { Monitors, Lines, Mains("amp/in/1", "amp-2/in/1") })
        {
            var resolved = CleanShows.Engine.Resolve(show);
            Assert.Empty(CleanShows.Engine.Diagnose(resolved, CleanShows.Engine.Check(resolved)));
        }
    }

    [Fact]
    public void Two_labels_that_disagree_are_exchanged_or_the_patch_is()
    {
        var cause = Only(Monitors.With(Route("desk/aux/5", "desk/transmit/2"), Route("desk/aux/6", "desk/transmit/1"), Monitors.Patch.Routes[1]));

        Assert.Equal("The labels of desk/aux/5 and desk/aux/6 are exchanged, or one and two are exchanged in the routes of desk", cause.Title);
        Assert.Equal(CauseConfidence.Tie, cause.Confidence);
        Assert.Equal("Label desk/aux/5 'TWO' and desk/aux/6 'ONE'", cause.Repair.Title);
        Assert.Equal(
            "Change the route from desk/aux/5 to desk/transmit/2 into desk/aux/6 to desk/transmit/2 and change the route from desk/aux/6 to desk/transmit/1 "
                + "into desk/aux/5 to desk/transmit/1",
            Assert.Single(cause.Alternatives).Title
        );
    }

    [Fact]
    public void A_direct_box_whose_power_is_at_another_line_is_exchanged_with_it_or_the_power_is_missing()
    {
        var cause = Only(Lines.With(Lines.Patch.Routes[0], Route("desk/receive/1", "desk/channel/2"), Route("desk/receive/2", "desk/channel/1")));

        Assert.Equal(CauseConfidence.Tie, cause.Confidence);
        Assert.StartsWith("direct is exchanged with another in the routes of desk, or phantom power is off at box/in/1", cause.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Power_that_is_off_while_no_other_input_has_it_to_spare_is_only_that()
    {
        var cause = Only(Lines with { Patch = Lines.Patch with { Inputs = [new() { At = At("box/in/2"), Phantom = false }] } });

        Assert.Equal(CauseConfidence.Only, cause.Confidence);
        Assert.Equal("Switch phantom power on at box/in/2", cause.Repair.Title);
    }

    [Fact]
    public void One_side_of_the_mains_without_a_cable_is_plugged_like_the_other()
    {
        var cause = Only(Mains("amp/in/1", null));

        Assert.Equal("The cable from box-2/out/1 to amp-2/in/1 is missing", cause.Title);
        Assert.Equal("Plug box-2/out/1 to amp-2/in/1", cause.Repair.Title);
    }

    [Fact]
    public void Either_of_two_plugs_at_different_numbers_may_be_the_wrong_one()
    {
        var cause = Only(Mains("amp/in/1", "amp-2/in/3"));

        Assert.Equal(CauseConfidence.Tie, cause.Confidence);
        Assert.Equal("Plug box/out/1 to amp/in/3", cause.Repair.Title);
        Assert.Equal("Plug box-2/out/1 to amp-2/in/1", Assert.Single(cause.Alternatives).Title);
    }

    private static Show Mains(string left, string? right) =>
        Rig with
        {
            Feeds =
            [
                Feed("left", FeedRole.Main, "desk/main/1", "box/out/1") with
                {
                    Set = "pa",
                    Part = "left",
                },
                Feed("right", FeedRole.Main, "desk/main/2", "box-2/out/1") with
                {
                    Set = "pa",
                    Part = "right",
                },
            ],
            Rig = Rig.Rig with { Cables = right is null ? [Cable("box/out/1", left)] : [Cable("box/out/1", left), Cable("box-2/out/1", right)] },
            Patch = new Patch
            {
                Routes =
                [
                    Route("desk/main/1", "desk/transmit/1"),
                    Route("desk/main/2", "desk/transmit/5"),
                    Route("box/receive/1", "box/out/1"),
                    Route("box-2/receive/1", "box-2/out/1"),
                ],
                Streams = [Stream("s", "desk/transmit/1-4", "box/receive/1-4"), Stream("t", "desk/transmit/5-8", "box-2/receive/1-4")],
            },
        };
}
