using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Lines;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Planning.Changeovers.ChangeoverShows;

namespace RoutingRules.Tests.Planning.Changeovers;

/// <summary>When phantom power goes off and on in a changeover.</summary>
public sealed class PhantomChangeoverTests
{
    [Fact]
    public void Phantom_power_goes_off_before_the_plug_and_comes_on_after_it_and_before_the_patch()
    {
        var after = FirstWithPhantom with
        {
            Lines =
            [
                Line("player", "box/in/1", "desk/channel/1") with
                {
                    Kind = LineKind.Line,
                },
                Line("voice", "box/in/2", "desk/channel/2") with
                {
                    Phantom = PhantomNeed.Required,
                },
            ],
            Patch = FirstWithPhantom.Patch with
            {
                Inputs =
                [
                    new()
                    {
                        At = At("box/in/1"),
                        Phantom = false,
                        GainOwner = new("desk"),
                    },
                    new()
                    {
                        At = At("box/in/2"),
                        Phantom = true,
                        GainOwner = new("desk"),
                    },
                ],
                Routes = [Route("desk/receive/3", "desk/channel/5")],
            },
        };
        var steps = Steps(FirstWithPhantom, after);

        Assert.Equal(
            [
                "Mute desk: Mute desk/channel/1-2, 5.",
                "PhantomOff desk: Switch phantom power off at box/in/1.",
                "PhantomOff desk: Check that phantom power (48 V) is off at box/in/2.",
                "Stage box: Pull 'guitar' out of box/in/2.",
                "Stage box: Move 'voice' from box/in/1 to box/in/2.",
                "Stage box: Plug 'player' into box/in/1.",
                "PhantomOn desk: Switch phantom power on at box/in/2.",
                "ReadBack box: Read back what is plugged here against this card, connector by connector.",
            ],
            steps.Take(8)
        );
    }

    [Fact]
    public void A_plug_leaves_its_input_before_a_cable_comes_in_there()
    {
        var before = LineRig.Show(Line("voice", "desk/in/1", "desk/channel/3"), Line("bass", "box/in/1", "desk/channel/4")).Cables();
        var after = LineRig
            .Show(Line("voice", "box/in/1", "desk/channel/3"), Line("bass", "box/in/2", "desk/channel/4"))
            .Cables(Cable("split/isolated/1", "desk/in/1"));

        Assert.Equal(
            [
                "Stage desk: Pull 'voice' out of desk/in/1 and keep it at hand.",
                "Stage split: Plug a cable from split/isolated/1 to desk/in/1.",
                "Stage box: Move 'bass' from box/in/1 to box/in/2.",
                "Stage box: Plug 'voice' into box/in/1.",
            ],
            Steps(before, after).Where(step => step.StartsWith("Stage", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void What_lines_need_is_known_where_nothing_is_said_about_inputs()
    {
        var after = First with
        {
            Lines =
            [
                Line("player", "box/in/1", "desk/channel/1") with
                {
                    Phantom = PhantomNeed.Forbidden,
                },
                Line("condenser", "box/in/2", "desk/channel/2") with
                {
                    Phantom = PhantomNeed.Required,
                },
            ],
        };

        Assert.Equal(
            [
                "PhantomOff box: Switch phantom power off at box/in/1.",
                "PhantomOff box: Check that phantom power (48 V) is off at box/in/2.",
                "Stage box: At box/in/1 pull 'voice' and plug 'player'.",
                "Stage box: At box/in/2 pull 'guitar' and plug 'condenser'.",
                "PhantomOn box: Switch phantom power on at box/in/2.",
            ],
            Steps(First, after).Where(step => step.StartsWith("Phantom", StringComparison.Ordinal) || step.StartsWith("Stage", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void What_must_not_get_it_is_plugged_ahead_only_after_a_look()
    {
        var after = First with
        {
            Lines = [.. First.Lines, Line("keys", "box/in/6", "desk/channel/8") with { Phantom = PhantomNeed.Forbidden, Kind = LineKind.Line }],
        };

        Assert.Equal(
            ["Prepare box: Check that phantom power (48 V) is off at box/in/6.", "Prepare box: Plug 'keys' into box/in/6."],
            Steps(First, after).Where(step => step.StartsWith("Prepare", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Who_owns_the_gain_before_the_change_switches_phantom_power_and_all_legs_of_a_split_are_muted()
    {
        var split = First with
        {
            Rig = Of(("desk", SmallProfiles.Console), ("mon", SmallProfiles.Console), ("box", SmallProfiles.Box)).Rig,
            Lines =
            [
                Line("voice", "box/in/1", "desk/channel/1") with
                {
                    From = new() { At = [At("box/in/1"), At("mon/in/1")] },
                    Phantom = PhantomNeed.Required,
                },
            ],
        };
        var before = split with
        {
            Patch = split.Patch with
            {
                Routes = [Route("mon/in/1", "mon/channel/1")],
                Inputs =
                [
                    new()
                    {
                        At = At("box/in/1"),
                        Phantom = true,
                        GainOwner = new("desk"),
                    },
                    new() { At = At("mon/in/1"), Phantom = false },
                ],
            },
        };
        var after = before with
        {
            Lines = [],
            Patch = before.Patch with
            {
                Inputs =
                [
                    new()
                    {
                        At = At("box/in/1"),
                        Phantom = false,
                        GainOwner = new("mon"),
                    },
                    new() { At = At("mon/in/1"), Phantom = false },
                ],
            },
        };
        var steps = Steps(before, after);

        Assert.Contains("PhantomOff desk: Switch phantom power off at box/in/1.", steps);
        Assert.Contains("Mute mon: Mute mon/channel/1.", steps);
        Assert.Contains("Mute desk: Mute desk/channel/1.", steps);
    }

    [Fact]
    public void What_the_second_show_has_on_against_its_own_line_stays_off_and_is_told()
    {
        var after = First with
        {
            Lines = [Line("player", "box/in/1", "desk/channel/1") with { Phantom = PhantomNeed.Forbidden }],
            Patch = FirstWithPhantom.Patch,
        };
        var plan = TestEngine.PlanChangeover(FirstWithPhantom, after);

        Assert.DoesNotContain(plan.Steps, step => step.Phase == ChangeoverPhase.PhantomOn);
        Assert.Equal(["'player' must not get phantom power, and the second show has it on at box/in/1: this plan leaves it off there."], plan.Remarks);
    }

    [Fact]
    public void What_both_shows_have_on_against_their_own_line_is_a_finding_and_no_step()
    {
        var wrong = FirstWithPhantom with { Lines = [FirstWithPhantom.Lines[0] with { Phantom = PhantomNeed.Forbidden }] };

        Assert.Empty(TestEngine.PlanChangeover(wrong, wrong).Steps);
        Assert.Empty(TestEngine.PlanChangeover(wrong, wrong).Remarks);
    }

    [Fact]
    public void Two_lines_of_one_input_that_want_opposite_things_are_a_finding_and_no_step()
    {
        var wrong = First with
        {
            Lines =
            [
                Line("player", "box/in/1", "desk/channel/1") with
                {
                    Phantom = PhantomNeed.Forbidden,
                },
                Line("voice", "box/in/1", "desk/channel/2") with
                {
                    Phantom = PhantomNeed.Required,
                },
            ],
        };

        Assert.Empty(TestEngine.PlanChangeover(wrong, wrong).Steps);
    }
}
