using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Rules;
using RoutingRules.Tests.Rules.Network;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Answers.Changeovers;

public sealed class ChangeoverPlannerTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static readonly Show First = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
        .With(Stream("down", "desk/transmit/1-4", "box/receive/1-4"), Stream("up", "box/transmit/1-4", "desk/receive/1-4")) with
    {
        Feeds =
        [
            Feed("ears", FeedRole.InEar, "desk/aux/1", "box/out/1") with
            {
                Limiter = true,
                Pack = "1",
            },
            Feed("main", FeedRole.Main, "desk/aux/2", "box/out/2"),
        ],
        Lines = [Line("voice", "box/in/1", "desk/channel/1") with { Phantom = PhantomNeed.Required }, Line("guitar", "box/in/2", "desk/channel/2")],
    };

    private static Show FirstWithPhantom =>
        First with
        {
            Patch = First.Patch with
            {
                Inputs =
                [
                    new()
                    {
                        At = At("box/in/1"),
                        Phantom = true,
                        GainOwner = new("desk"),
                    },
                ],
            },
        };

    private static string[] Steps(Show before, Show after) =>
        [.. Engine.PlanChangeover(before, after).Steps.Select(step => $"{step.Phase} {step.Place}: {step.Text}")];

    [Fact]
    public void Routes_under_sound_are_muted_in_ears_first_and_opened_after_they_were_checked()
    {
        var after = First.With(Route("desk/aux/5-6", "desk/transmit/1-2")) with
        {
            Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/5", "box/out/1"), Feed("main", FeedRole.Main, "desk/aux/6", "box/out/2")],
        };

        Assert.Equal(
            [
                "Mute box: Mute the in-ears at box/out/1.",
                "Mute box: Mute, or turn down what is behind, box/out/2.",
                "Patch desk: Route desk/aux/5-6 to desk/transmit/1-2.",
                "Verify box: Still muted, check for desk/aux/5 ('ears') at box/out/1.",
                "Verify box: Still muted, check for desk/aux/6 ('main') at box/out/2.",
                "Open box: Open the in-ears at box/out/1 one by one: a technician hears each on a pack, low, before a performer wears it.",
                "Open box: Bring up box/out/2 one at a time, from low level.",
            ],
            Steps(First, after)
        );
    }

    [Theory]
    [InlineData("iem")]
    [InlineData("monitor")]
    [InlineData("utility")]
    [InlineData("main")]
    public void What_ends_at_a_transmitter_rack_is_muted_first_and_heard_low_whatever_its_role_says(string role)
    {
        // The rack hangs on the second output, so that list order alone would put it last.
        var rig = EarRig.Cabled(EarRig.Show(), Cable("box/out/2", "rack/in/2"));
        var before = rig with
        {
            Feeds = [Feed("sides", FeedRole.Main, "desk/aux/1", "box/out/1"), Feed("lead", new FeedRole(role), "desk/aux/2", "box/out/2")],
        };
        var after = rig.With(Route("desk/aux/5-6", "desk/transmit/1-2")) with
        {
            Feeds = [Feed("sides", FeedRole.Main, "desk/aux/5", "box/out/1"), Feed("lead", new FeedRole(role), "desk/aux/6", "box/out/2")],
        };

        Assert.Equal(
            [
                "Mute rack: Mute the in-ears at rack/in/2.",
                "Mute box: Mute, or turn down what is behind, box/out/1.",
                "Patch desk: Route desk/aux/5-6 to desk/transmit/1-2.",
                "Verify rack: Still muted, check for desk/aux/6 ('lead') at rack/in/2.",
                "Verify box: Still muted, check for desk/aux/5 ('sides') at box/out/1.",
                "Open rack: Open the in-ears at rack/in/2 one by one: a technician hears each on a pack, low, before a performer wears it.",
                "Open box: Bring up box/out/1 one at a time, from low level.",
            ],
            Steps(before, after)
        );
    }

    [Fact]
    public void A_plug_in_a_headphone_output_is_for_ears_whatever_its_role_says()
    {
        var show = First.WithProfile(
            "box",
            box => box with { PortGroups = [.. box.PortGroups.Select(group => group.Id.Value == "out" ? group with { Level = SignalLevel.Headphone } : group)] }
        );
        var step = Assert.Single(
            Engine.PlanChangeover(show with { Feeds = [] }, show with { Feeds = [Feed("lead", new FeedRole("iem"), "desk/aux/1", "box/out/1")] }).Steps,
            step => step.Phase == ChangeoverPhase.Stage
        );

        Assert.Equal("Plug 'lead' (in-ear) into box/out/1.", step.Text);
        Assert.Equal(["Make sure that nobody wears this pack."], step.Hazards);
    }

    [Fact]
    public void What_nobody_hears_is_done_ahead()
    {
        var after = First.With(Route("desk/aux/8", "desk/transmit/8")) with { Lines = [.. First.Lines, Line("choir", "box/in/6", "desk/channel/8")] };

        Assert.Equal(
            ["Prepare box: Plug 'choir' into box/in/6.", "Prepare desk: Route desk/aux/8 to desk/transmit/8."],
            Steps(First, after with { Patch = after.Patch with { Streams = First.Patch.Streams } })
                .Where(step => step.StartsWith("Prepare", StringComparison.Ordinal))
        );
    }

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
                "Mute desk: Mute the channels desk/channel/1-2, 5.",
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
    public void Two_plugs_that_change_places_need_a_hand_in_between()
    {
        var after = First with
        {
            Lines = [Line("voice", "box/in/2", "desk/channel/2") with { Phantom = PhantomNeed.Required }, Line("guitar", "box/in/1", "desk/channel/1")],
        };

        Assert.Equal(
            [
                "Stage box: Pull 'voice' out of box/in/1 and keep it at hand.",
                "Stage box: Move 'guitar' from box/in/2 to box/in/1.",
                "Stage box: Plug 'voice' into box/in/2.",
            ],
            Steps(First, after).Where(step => step.StartsWith("Stage", StringComparison.Ordinal))
        );
    }

    [Fact]
    public void Clocks_come_last_and_alone_with_everything_muted()
    {
        var timed = First with
        {
            Rig = First.Rig with
            {
                Clocks =
                [
                    new()
                    {
                        Id = new("word"),
                        SampleRate = 48_000,
                        Leader = new("desk"),
                    },
                ],
            },
        };
        var after = timed with { Rig = timed.Rig with { Clocks = [timed.Rig.Clocks[0] with { Leader = new("box") }] } };
        var steps = Engine.PlanChangeover(timed, after).Steps;

        Assert.Equal(
            [At("box/out/1"), At("box/out/2"), At("box/out/3-4")],
            steps.Where(step => step.Phase == ChangeoverPhase.Mute).SelectMany(step => step.Points).Where(run => run.Device == new Id<Device>("box"))
        );
        Assert.Equal("Set clock 'word': leader box, no backup, 48000 Hz.", steps.First(step => step.Phase == ChangeoverPhase.Clock).Text);
        Assert.True(steps.SkipWhile(step => step.Phase != ChangeoverPhase.Clock).All(step => step.Phase >= ChangeoverPhase.Clock));
    }

    [Fact]
    public void A_plug_in_place_of_another_is_one_step_and_its_outputs_are_muted()
    {
        var after = First with { Feeds = [First.Feeds[0], Feed("wedge", FeedRole.Monitor, "desk/aux/2", "box/out/2")] };
        var plan = Engine.PlanChangeover(First, after);

        Assert.Equal("At box/out/2 pull 'main' and plug 'wedge'.", Assert.Single(plan.Steps, step => step.Phase == ChangeoverPhase.Stage).Text);
        Assert.Equal(At("box/out/2"), Assert.Single(plan.Steps, step => step.Phase == ChangeoverPhase.Mute).Points[0]);
    }

    [Fact]
    public void A_box_that_comes_and_one_that_goes_are_brought_and_taken_with_their_leads()
    {
        var other = Of(("desk", SmallProfiles.Console), ("new", SmallProfiles.ClearableBox), ("amp", SmallProfiles.Amplifier));
        var after = First with { Rig = other.Rig with { Cables = [Cable("new/out/1", "amp/in/1")] }, Feeds = [], Lines = [], Patch = new Patch() };
        var steps = Steps(First, after);

        Assert.Contains("Stage box: Take out 'box'.", steps);
        Assert.Contains("Stage new: Bring in 'new' (test/box-clearable), connect it and power it up.", steps);
        Assert.Contains("Stage new: Plug a cable from new/out/1 to amp/in/1.", steps);
    }

    [Fact]
    public void The_way_back_ends_with_the_muting_and_cards_hold_every_step_once()
    {
        var after = First.With(Route("desk/aux/5", "desk/transmit/1")) with
        {
            Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/5", "box/out/1")],
            Lines = [First.Lines[0]],
        };
        var plan = Engine.PlanChangeover(
            FirstWithPhantom,
            after with
            {
                Patch = after.Patch with { Inputs = [new() { At = At("box/in/1"), Phantom = false }] },
            }
        );

        Assert.Equal(ChangeoverPhase.Mute, plan.Steps[plan.RollbackAfter - 1].Phase);
        Assert.True(plan.Steps[plan.RollbackAfter].Phase > ChangeoverPhase.Mute);
        Assert.Equal(plan.Steps.Select(step => step.Number), plan.Cards.SelectMany(card => card.Steps).Select(step => step.Number).Order());
        Assert.Equal(
            plan.SecondsAfterTheActBefore,
            new[] { ChangeoverTiming.ClearStage, ChangeoverTiming.BeforeLineCheck, ChangeoverTiming.LineCheck }.Sum(timing =>
                plan.Cards.Max(card => card.Seconds(timing))
            )
        );
    }

    [Fact]
    public void Another_pace_gives_other_times()
    {
        var after = First with { Lines = [First.Lines[0]] };

        Assert.Equal(7, Engine.PlanChangeover(First, after, new Pace { SecondsToPlug = 7 }).Steps.Single(step => step.Phase == ChangeoverPhase.Stage).Seconds);
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
        Assert.Contains("Mute mon: Mute the channels mon/channel/1.", steps);
        Assert.Contains("Mute desk: Mute the channels desk/channel/1.", steps);
    }

    [Fact]
    public void What_the_second_show_has_on_against_its_own_line_stays_off_and_is_told()
    {
        var after = First with
        {
            Lines = [Line("player", "box/in/1", "desk/channel/1") with { Phantom = PhantomNeed.Forbidden }],
            Patch = FirstWithPhantom.Patch,
        };
        var plan = Engine.PlanChangeover(FirstWithPhantom, after);

        Assert.DoesNotContain(plan.Steps, step => step.Phase == ChangeoverPhase.PhantomOn);
        Assert.Equal(["'player' must not get phantom power, and the second show has it on at box/in/1: this plan leaves it off there."], plan.Remarks);
    }

    [Fact]
    public void What_both_shows_have_on_against_their_own_line_is_a_finding_and_no_step()
    {
        var wrong = FirstWithPhantom with { Lines = [FirstWithPhantom.Lines[0] with { Phantom = PhantomNeed.Forbidden }] };

        Assert.Empty(Engine.PlanChangeover(wrong, wrong).Steps);
        Assert.Empty(Engine.PlanChangeover(wrong, wrong).Remarks);
    }

    [Fact]
    public void A_pack_that_changes_wearer_is_wiped_and_labelled_and_heard_before_it_goes_on()
    {
        var before = First with { Feeds = [First.Feeds[0] with { Person = "harp" }] };
        var after = First with { Feeds = [First.Feeds[0] with { Person = "pipes" }] };
        var plan = Engine.PlanChangeover(before, after);

        Assert.Equal(
            [
                "Mute: Mute the in-ears at box/out/1.",
                "Stage: Pack 1 goes from 'harp' to 'pipes': take it back, wipe it and label it 'pipes'.",
                "Verify: Still muted, check for desk/aux/1 ('ears') at box/out/1.",
                "Open: Open the in-ears at box/out/1 one by one: a technician hears each on a pack, low, before a performer wears it.",
            ],
            plan.Steps.Select(step => $"{step.Phase}: {step.Text}")
        );
        Assert.Equal(
            ["Limiters in the path.", "Pack 1 is for 'pipes' now: a technician hears it first, turned down, before it is handed over."],
            plan.Steps[^1].Hazards
        );
        Assert.Empty(Engine.PlanChangeover(before, before with { Feeds = [before.Feeds[0] with { Name = "Another name" }] }).Steps);
    }
}
