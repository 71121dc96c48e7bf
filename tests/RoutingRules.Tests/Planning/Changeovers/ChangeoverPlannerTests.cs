using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Hearing;
using RoutingRules.Tests.Checking.Rules.Networks;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Planning.Changeovers.ChangeoverShows;

namespace RoutingRules.Tests.Planning.Changeovers;

public sealed class ChangeoverPlannerTests
{
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
            TestEngine.PlanChangeover(show with { Feeds = [] }, show with { Feeds = [Feed("lead", new FeedRole("iem"), "desk/aux/1", "box/out/1")] }).Steps,
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
        var steps = TestEngine.PlanChangeover(timed, after).Steps;

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
        var plan = TestEngine.PlanChangeover(First, after);

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
        var plan = TestEngine.PlanChangeover(
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

        Assert.Equal(
            7,
            TestEngine.PlanChangeover(First, after, new Pace { SecondsToPlug = 7 }).Steps.Single(step => step.Phase == ChangeoverPhase.Stage).Seconds
        );
    }

    [Fact]
    public void A_pack_that_changes_wearer_is_wiped_and_labelled_and_heard_before_it_goes_on()
    {
        var before = First with { Feeds = [First.Feeds[0] with { Person = "harp" }] };
        var after = First with { Feeds = [First.Feeds[0] with { Person = "pipes" }] };
        var plan = TestEngine.PlanChangeover(before, after);

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
        Assert.Empty(TestEngine.PlanChangeover(before, before with { Feeds = [before.Feeds[0] with { Name = "Another name" }] }).Steps);
    }

    [Fact]
    public void What_comes_in_is_of_the_kind_that_the_next_act_describes()
    {
        var before = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("rack", SmallProfiles.FreeBox));
        var box = SmallProfiles.Box with { PortGroups = [.. SmallProfiles.Box.PortGroups.Where(group => group.Id.Value != "out")], Routing = [] };
        var after = before with
        {
            Rig = before.Rig with
            {
                Profiles = [.. before.Rig.Profiles.Select(profile => profile.Id == box.Id ? box : profile)],
                Devices = [.. before.Rig.Devices.Select(device => device.Id.Value == "rack" ? device with { Profile = box.Id } : device)],
            },
        };
        var plan = Promise.Engine.PlanChangeover(before, after);
        var exchange = Assert.Single(plan.Steps.Index(), step => step.Item.Text.StartsWith("Exchange 'rack'", StringComparison.Ordinal)).Index;

        Assert.Null(Promise.Resolve(plan.States[exchange + 1]).Graph.Device(new("rack"))!.Group(new("out")));
        Assert.NotNull(Promise.Resolve(plan.States[exchange + 1]).Graph.Device(new("box"))!.Group(new("out")));
    }
}
