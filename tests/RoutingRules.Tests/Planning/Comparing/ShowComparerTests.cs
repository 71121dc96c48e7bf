using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Comparing;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Hearing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.Comparing;

public sealed class ShowComparerTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    /// <summary>Aux 1 to 4 by themselves at the first outputs of the box; one line on its first input.</summary>
    private static readonly Show Before = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
        .With(Stream("down", "desk/transmit/1-4", "box/receive/1-4"), Stream("up", "box/transmit/1-4", "desk/receive/1-4")) with
    {
        Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/1", "box/out/1") with { Name = "Ears" }, FeedTo("wedge", FeedRole.Monitor, "desk/aux/2", "box")],
        Lines = [Line("voice", "box/in/1", "desk/channel/1")],
    };

    private static ShowComparison Compare(Show after) => Engine.Compare(Before, after);

    [Fact]
    public void A_route_that_changes_is_heard_where_its_stream_arrives()
    {
        var change = Assert.Single(Compare(Before.With(Route("desk/aux/5", "desk/transmit/2"))).Sinks);

        Assert.Equal(
            (At("box/out/2"), At("desk/aux/2"), At("desk/aux/5"), SinkEffect.Changes, "wedge", false),
            (change.At, change.Before, change.After, change.Effect, change.ServedBefore, change.IsInEar)
        );
    }

    [Fact]
    public void Neighbours_that_change_alike_are_one_change_and_in_ears_come_first()
    {
        var changes = Compare(Before.With(Route(null, "desk/transmit/1"), Route("desk/aux/7-8", "desk/transmit/3-4"))).Sinks;

        Assert.Equal(
            [(At("box/out/1"), SinkEffect.Stops, true), (At("box/out/3-4"), SinkEffect.Changes, false)],
            changes.Select(change => (change.At, change.Effect, change.IsInEar))
        );
        Assert.Equal((At("desk/aux/3-4"), At("desk/aux/7-8")), (changes[1].Before, changes[1].After));
    }

    [Fact]
    public void Another_line_at_the_same_input_changes_the_channel()
    {
        var change = Assert.Single(Compare(Before with { Lines = [Line("choir", "box/in/1", "desk/channel/1") with { Kind = LineKind.Line }] }).Sinks);

        Assert.Equal(
            (At("desk/channel/1"), At("box/in/1"), At("box/in/1"), "voice", "choir"),
            (change.At, change.Before, change.After, change.LineBefore, change.LineAfter)
        );
    }

    [Fact]
    public void What_moves_comes_goes_or_is_renamed_is_told_apart()
    {
        var after = Before.With(Route("desk/aux/2", "desk/transmit/3"), Route("desk/aux/3", "desk/transmit/2")) with
        {
            Feeds = [Before.Feeds[1], Feed("phones", FeedRole.InEar, "desk/aux/1", "box/out/1"), Feed("shaker", FeedRole.Monitor, "desk/aux/4", "box/out/4")],
            Lines = [],
        };

        Assert.Equal(
            [
                ("wedge/1", DemandFate.Moved, null),
                ("phones/1", DemandFate.Renamed, "ears"),
                ("shaker/1", DemandFate.Added, null),
                ("voice", DemandFate.Removed, null),
            ],
            Compare(after).Demands.Select(change => (change.Demand, change.Fate, change.Was))
        );
    }

    [Fact]
    public void A_renamed_device_is_one_change_and_nothing_else()
    {
        var after = new DeviceRenamer(new Dictionary<string, string> { ["box"] = "box-sr" }).Apply(Before);
        var comparison = Compare(after);

        Assert.Equal(
            ("device", "box-sr", "box", EntityChangeKind.Renamed),
            Assert.Single(comparison.Entities) is var change ? (change.Kind, change.Id, change.Was, change.Change) : default
        );
        Assert.True(comparison.Sinks.IsEmpty && comparison.Demands.IsEmpty && comparison.NewFindings.IsEmpty && comparison.ResolvedFindings.IsEmpty);
        Assert.Equal(At("box-sr/out/1"), after.Feeds[0].To[0].At);
    }

    [Fact]
    public void Changes_of_the_document_name_members_with_their_values()
    {
        var after = Before with { Title = "Second", Feeds = [Before.Feeds[1], Before.Feeds[0] with { Limiter = true }] };
        var changes = Compare(after).Entities;

        Assert.Equal(
            [("show", "", EntityChangeKind.Changed), ("feed", "wedge", EntityChangeKind.Reordered), ("feed", "ears", EntityChangeKind.Changed)],
            changes.Select(change => (change.Kind, change.Id, change.Change))
        );
        Assert.Equal(
            new MemberChange
            {
                Name = "title",
                Before = "\"Test\"",
                After = "\"Second\"",
            },
            Assert.Single(changes[0].Members)
        );
        Assert.Equal(new MemberChange { Name = "limiter", After = "true" }, Assert.Single(changes[2].Members));
    }

    [Fact]
    public void Findings_are_new_gone_or_still_there()
    {
        var comparison = Compare(Before.With(Route(null, "desk/transmit/2")) with { Feeds = [Before.Feeds[0] with { Limiter = true }, Before.Feeds[1]] });

        Assert.Contains(comparison.NewFindings, finding => finding.Rule == "RR3001");
        Assert.Contains(comparison.ResolvedFindings, finding => finding.Rule == "RR9001");
        Assert.DoesNotContain(comparison.UnchangedFindings, finding => finding.Rule is "RR3001" or "RR9001");
    }

    [Theory]
    [InlineData(true, null, PhantomNeed.Forbidden, true)]
    [InlineData(true, null, PhantomNeed.Either, true)]
    [InlineData(true, null, PhantomNeed.Required, false)]
    [InlineData(true, false, PhantomNeed.Forbidden, false)]
    [InlineData(true, true, PhantomNeed.Forbidden, false)]
    [InlineData(false, null, PhantomNeed.Forbidden, false)]
    [InlineData(null, null, PhantomNeed.Forbidden, false)]
    public void Phantom_power_that_nobody_speaks_of_again_is_carried_over(bool? was, bool? now, PhantomNeed need, bool expected)
    {
        var before = Before with { Patch = Before.Patch with { Inputs = [new() { At = At("box/in/1"), Phantom = was }] } };
        var after = Before with
        {
            Lines = [Line("player", "box/in/1", "desk/channel/1") with { Kind = LineKind.Line, Phantom = need }],
            Patch = Before.Patch with { Inputs = [new() { At = At("box/in/1"), Phantom = now }] },
        };

        Assert.Equal(expected, Engine.Compare(before, after).Hazards.Any(finding => finding.Rule == "RR6012"));
    }

    [Fact]
    public void Phantom_power_under_a_line_that_stays_is_no_danger()
    {
        var before = Before with { Patch = Before.Patch with { Inputs = [new() { At = At("box/in/1"), Phantom = true }] } };

        Assert.True(Engine.Compare(before, Before).Hazards.IsEmpty);
    }

    [Fact]
    public void A_main_mix_where_an_in_ear_mix_was_is_a_danger()
    {
        var main = Before with { Feeds = [Feed("main", FeedRole.Main, "desk/main/1", "box/out/1")] };
        var finding = Assert.Single(Engine.Compare(Before, main.With(Route("desk/main/1", "desk/transmit/1"))).Hazards);

        Assert.Equal(("RR9004", Severity.Error), (finding.Rule, finding.Severity));
        Assert.Equal("box/out/1 feeds 'Ears' in the first show and carries desk/main/1 in the second, as 'main' (main).", finding.Message);
    }

    [Fact]
    public void Silence_or_another_in_ear_mix_is_no_danger()
    {
        Assert.True(Compare(Before.With(Route(null, "desk/transmit/1"))).Hazards.IsEmpty);
        Assert.True(
            Compare(
                Before.With(Route("desk/aux/6", "desk/transmit/1")) with
                {
                    Feeds = [Feed("other", FeedRole.InEar, "desk/aux/6", "box/out/1")],
                }
            ).Hazards.IsEmpty
        );
    }

    public static TheoryData<string> RolesOfEarMixes => ["in-ear", "iem", "monitor", "utility"];

    /// <summary>The first mix goes to a transmitter rack by a cable.</summary>
    private static Show AtRack(params Feed[] feeds) => EarRig.Show(feeds);

    [Theory]
    [MemberData(nameof(RolesOfEarMixes))]
    public void What_ends_at_a_transmitter_rack_was_for_ears_whatever_its_role_says(string role)
    {
        var before = AtRack(Feed("lead", new FeedRole(role), "desk/aux/1", "box/out/1"));
        var after = AtRack(Feed("main", FeedRole.Main, "desk/main/1", "box/out/1")).With(Route("desk/main/1", "desk/transmit/1"));
        var comparison = Engine.Compare(before, after);

        var finding = Assert.Single(comparison.Hazards);
        Assert.Equal("RR9004", finding.Rule);
        Assert.StartsWith("box/out/1 feeds 'lead'", finding.Message, StringComparison.Ordinal);
        Assert.EndsWith("in the first show and carries desk/main/1 in the second, as 'main' (main).", finding.Message, StringComparison.Ordinal);
        Assert.True(Assert.Single(comparison.Sinks).IsInEar);
    }

    [Fact]
    public void A_rack_that_no_feed_names_has_ears_behind_it_too()
    {
        var finding = Assert.Single(Engine.Compare(AtRack(), AtRack().With(Route("desk/main/1", "desk/transmit/2"))).Hazards);

        Assert.Equal("box/out/2 goes into somebody's ears at rack/in/2 in the first show and carries desk/main/1 in the second.", finding.Message);
    }

    [Theory]
    [MemberData(nameof(RolesOfEarMixes))]
    public void Another_mix_that_a_feed_has_at_the_rack_is_no_danger(string role)
    {
        var before = AtRack(Feed("lead", new FeedRole(role), "desk/aux/1", "box/out/1"));
        var after = AtRack(Feed("bass", new FeedRole(role), "desk/aux/6", "box/out/1")).With(Route("desk/aux/6", "desk/transmit/1"));

        Assert.True(Engine.Compare(before, after).Hazards.IsEmpty);
    }

    [Fact]
    public void Talkback_that_is_placed_at_the_rack_is_a_danger()
    {
        var before = AtRack(Feed("lead", FeedRole.InEar, "desk/aux/1", "box/out/1"));
        var after = AtRack(Feed("calls", FeedRole.Talkback, "desk/aux/6", "box/out/1")).With(Route("desk/aux/6", "desk/transmit/1"));

        Assert.Equal("RR9004", Assert.Single(Engine.Compare(before, after).Hazards).Rule);
    }

    [Fact]
    public void A_rack_that_takes_the_stream_itself_is_compared_at_its_slots()
    {
        var rack = EarRig.Rack with { PortGroups = [SmallProfiles.Group("receive", PortKind.Receive, 4) with { BlockSize = 4 }, SmallProfiles.Network(1)] };
        var before = Of(("desk", SmallProfiles.Console), ("rack", rack)).With(Stream("down", "desk/transmit/1-4", "rack/receive/1-4")) with
        {
            Feeds = [Feed("lead", new FeedRole("iem"), "desk/aux/1", "rack/receive/1")],
        };
        var after = before.With(Route("desk/main/1", "desk/transmit/1")) with { Feeds = [] };
        var comparison = Engine.Compare(before, after);

        Assert.Equal(
            "rack/receive/1 feeds 'lead' (iem) into somebody's ears in the first show and carries desk/main/1 in the second.",
            Assert.Single(comparison.Hazards).Message
        );
        var change = Assert.Single(comparison.Sinks);
        Assert.Equal((At("rack/receive/1"), true), (change.At, change.IsInEar));
        Assert.Equal(
            "Mute rack: Mute the in-ears at rack/receive/1.",
            string.Join("; ", Engine.PlanChangeover(before, after).Steps.Take(1).Select(step => $"{step.Phase} {step.Place}: {step.Text}"))
        );
    }
}
