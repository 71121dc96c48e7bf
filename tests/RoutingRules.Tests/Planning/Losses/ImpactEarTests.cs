using RoutingRules.Model;
using RoutingRules.Planning;
using RoutingRules.Planning.Losses;
using RoutingRules.Profiles;
using RoutingRules.Reports.Answers;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Hearing;
using RoutingRules.Tests.Promises;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Planning.Losses;

/// <summary>Losses where a misspelt mix goes to a rack, an output has two cables, and what is left of a rig ends in somebody's ears.</summary>
public sealed class ImpactEarTests
{
    /// <summary>A console and two boxes on links of their own; <c>a/out/1</c> feeds racks, <c>a/out/3</c> the house.</summary>
    private static Show Make(DeviceProfile other, ValueList<Feed> feeds, params Cable[] cables)
    {
        var box = Small(SmallProfiles.FreeBox);
        var console = SmallProfiles.Console with
        {
            PortGroups = SmallProfiles.Console.PortGroups.Select(group => group.Id.Value == "out" ? group with { Count = 1 } : group).ToValueList(),
            FactoryRoutes = [],
        };
        var show = Of(("desk", console), ("a", box), ("b", other), ("rack", EarRig.Rack), ("rack-2", EarRig.Rack), ("amp", SmallProfiles.Amplifier));
        return (
            show with
            {
                Rig = show.Rig with
                {
                    Links = [Link("one", "desk/net/1", "a/net/1"), Link("two", "desk/net/2", "b/net/1")],
                    Cables = cables.ToValueList(),
                    Reserved = [new() { At = At("desk/out/1"), Reason = "guest desk" }],
                },
                Feeds = feeds,
            }
        )
            .With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"), Stream("s2", "desk/transmit/5-8", "b/receive/1-4"))
            .With(
                Route("desk/aux/1-2", "desk/transmit/1-2"),
                Route("desk/main/1", "desk/transmit/3"),
                Route(null, "desk/transmit/4"),
                Route(null, "desk/transmit/5-8"),
                Route("a/receive/1-3", "a/out/1-3")
            );
    }

    private static DeviceProfile Small(DeviceProfile box, bool inEar = false) =>
        box with
        {
            Id = new($"test/small-{inEar}"),
            PortGroups = box.PortGroups.Select(group => group.Id.Value == "out" ? group with { Count = 4, InEar = inEar } : group).ToValueList(),
        };

    private static Link Link(string id, string from, string to) =>
        new()
        {
            Id = new(id),
            Network = new("net"),
            From = At(from),
            To = At(to),
        };

    private static readonly Feed Misspelt = Feed("singer", new FeedRole("inear"), "desk/aux/1", "a/out/1") with { Limiter = true, Priority = Priority.Low };
    private static readonly Feed House = Feed("house", FeedRole.Main, "desk/main/1", "a/out/3");

    private static ImpactAnswer Ask(Show show) => Promise.Engine.Impact(show, new ImpactOptions());

    private static LossImpact Loss(ImpactAnswer answer, string id) => Assert.Single(answer.Losses, loss => loss.Lost[0].Id == id);

    private static string Told(LossImpact loss) =>
        string.Join(
            "; ",
            loss.Subjects.Select(subject => $"{subject.Subject} {subject.Fate} {string.Join(' ', subject.LostAt)}, {string.Join(' ', subject.RemainsAt)}")
        );

    private static string? Carried(Show after, string at)
    {
        var resolved = Promise.Resolve(RemovalOracle.Without(after, [new LostThing { Kind = LossKind.Device, Id = "a" }]));
        return RemovalOracle.Source(resolved, resolved, At(at)[0])?.ToString();
    }

    [Fact]
    public void A_mix_that_ends_in_ears_comes_first_and_is_protected_whatever_its_role_says()
    {
        var show = Make(Small(SmallProfiles.FreeBox), [House, Misspelt], Cable("a/out/1", "rack/in/1"));
        var answer = Ask(show);
        var loss = Loss(answer, "a");

        Assert.Equal(["singer", "house"], loss.Subjects.Select(subject => subject.Subject));
        Assert.True(loss.Subjects[0].IsInEar && loss.Subjects[0].IsProtected && !loss.Subjects[1].IsInEar);
        Assert.Contains(answer.FailureSets, sets => sets.Feed == "singer");
        Assert.True(Loss(answer, "a/out/1 to rack/in/1").IsSinglePoint);
        Assert.Equal(["singer/1", "house/1"], loss.Plan!.Recovered.Select(recovered => recovered.Demand));
    }

    [Fact]
    public void All_in_ear_feeds_are_those_that_end_in_ears()
    {
        var second = Feed("drummer", FeedRole.Monitor, "desk/aux/2", "a/out/2") with { Limiter = true };
        var show = Make(Small(SmallProfiles.FreeBox), [Misspelt, second], Cable("a/out/1-2", "rack/in/1-2"));

        Assert.Equal(["all in-ear feeds"], Loss(Ask(show), "a").Silences);
    }

    [Fact]
    public void A_card_says_how_to_listen_to_what_ends_in_ears()
    {
        var show = Make(Small(SmallProfiles.FreeBox), [Misspelt, House], Cable("a/out/1", "rack/in/1"));
        var answer = Ask(show);
        var text = System.Text.RegularExpressions.Regex.Replace(ImpactReport.Text(answer, show), @"\s+", " ");
        using var json = new MemoryStream();
        ImpactJson.Write(answer, json);

        Assert.Contains("IN-EAR", text, StringComparison.Ordinal);
        Assert.Contains("A technician first, low; then", text, StringComparison.Ordinal);
        Assert.Contains("\"inEar\": true", System.Text.Encoding.UTF8.GetString(json.ToArray()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a/out/1", "rack/in/1", "rack-2/in/3")]
    [InlineData("a/out/1", "rack-2/in/3", "rack/in/1")]
    public void Every_cable_of_an_output_is_named_and_moves(string from, string one, string other)
    {
        var show = Make(Small(SmallProfiles.FreeBox), [Misspelt], Cable(from, one), Cable(from, other));
        var plan = Loss(Ask(show), "a").Plan!;
        var step = Assert.Single(plan.Steps, step => step.Kind == FallbackStepKind.Replug);

        Assert.Equal(["rack-2/in/3", "rack/in/1"], step.CableTo.Select(point => point.ToString()).Order(StringComparer.Ordinal));
        Assert.Empty(plan.Unrecovered);
        var after = plan.Apply(show);
        Assert.Equal(("desk/aux/1", "desk/aux/1"), (Carried(after, "rack/in/1"), Carried(after, "rack-2/in/3")));
        Assert.DoesNotContain(after.Rig.Cables, cable => cable.From.Device.Value == "a");
    }

    [Fact]
    public void Both_halves_of_a_pair_take_all_their_cables_along_in_whichever_order_they_stand()
    {
        var pair = Feed("pair", FeedRole.InEar, "desk/aux/1-2", "a/out/1-2") with { Limiter = true };
        var show = Make(
            Small(SmallProfiles.FreeBox),
            [pair],
            Cable("a/out/2", "rack-2/in/2"),
            Cable("a/out/1-2", "rack/in/3-4"),
            Cable("a/out/1", "rack-2/in/1")
        );
        var plan = Loss(Ask(show), "a").Plan!;
        var after = plan.Apply(show);

        Assert.Equal(
            ["rack-2/in/1", "rack-2/in/2", "rack/in/3", "rack/in/4"],
            Assert.Single(plan.Steps, step => step.Kind == FallbackStepKind.Replug).CableTo.Select(point => point.ToString()).Order(StringComparer.Ordinal)
        );
        Assert.Equal(
            ["desk/aux/1", "desk/aux/2", "desk/aux/1", "desk/aux/2"],
            new[] { "rack/in/3", "rack/in/4", "rack-2/in/1", "rack-2/in/2" }.Select(at => Carried(after, at))
        );
    }

    [Fact]
    public void The_loss_of_one_of_two_racks_on_an_output_is_heard_there_alone()
    {
        var show = Make(Small(SmallProfiles.FreeBox), [Misspelt], Cable("a/out/1", "amp/in/1"), Cable("a/out/1", "rack/in/1"));
        var answer = Ask(show);

        Assert.Equal("singer Partly rack/in/1, amp/in/1", Told(Loss(answer, "rack")));
        Assert.Equal("singer Partly amp/in/1, rack/in/1", Told(Loss(answer, "a/out/1 to amp/in/1")));
        var plan = Loss(answer, "rack").Plan!;
        Assert.Empty(plan.Steps);
        Assert.Equal(
            ("singer/1", At("rack/in/1"), "What plays it, rack/in/1, is lost."),
            (plan.Unrecovered[0].Demand, plan.Unrecovered[0].Sink, plan.Unrecovered[0].Reason)
        );
    }

    [Fact]
    public void What_goes_on_over_another_cable_is_left_alone_while_the_rest_is_planned()
    {
        var show = Make(
            Small(SmallProfiles.FreeBox),
            [Misspelt, Feed("fill", FeedRole.Fill, "desk/main/1", "b/out/1")],
            Cable("a/out/1", "rack/in/1"),
            Cable("a/out/1", "rack-2/in/1")
        );
        show = show with
        {
            Rig = show.Rig with
            {
                Devices = show.Rig.Devices.Select(device => device.Id.Value is "b" or "rack" ? device with { Power = [new("stage")] } : device).ToValueList(),
            },
            Patch = show.Patch with
            {
                Routes =
                [
                    .. show.Patch.Routes.Where(route => route.To != At("desk/transmit/5-8")),
                    Route("desk/main/1", "desk/transmit/5"),
                    Route("b/receive/1", "b/out/1"),
                ],
            },
        };
        var loss = Loss(Ask(show), "stage");

        Assert.Equal("singer Partly rack/in/1, rack-2/in/1; fill Lost b/out/1, ", Told(loss));
        Assert.Equal(["fill/1"], loss.Plan!.Recovered.Select(recovered => recovered.Demand));
        Assert.Equal(["singer/1 at rack/in/1"], loss.Plan.Unrecovered.Select(unrecovered => $"{unrecovered.Demand} at {unrecovered.Sink}"));
    }

    [Fact]
    public void Nothing_that_is_not_limited_is_offered_a_place_in_somebodys_ears()
    {
        // The box that is left is a pack amplifier: each of its outputs is in somebody's ears.
        var plan = Loss(Ask(Make(Small(SmallProfiles.FreeBox, true), [House, Feed("wedge", FeedRole.Monitor, "desk/aux/2", "a/out/2")])), "a").Plan!;

        Assert.Empty(plan.Steps);
        Assert.Empty(plan.Recovered);
        Assert.Contains(
            plan.Unrecovered,
            entry => entry.Demand == "house/1" && entry.Reason.EndsWith("as it is not meant for them.", StringComparison.Ordinal)
        );
        Assert.Contains(plan.Unrecovered, entry => entry.Demand == "wedge/1" && entry.Reason.EndsWith("as no limiter is declared.", StringComparison.Ordinal));
    }

    [Fact]
    public void A_limited_ear_mix_may_go_to_other_ears_outputs()
    {
        var plan = Loss(Ask(Make(Small(SmallProfiles.FreeBox, true), [Misspelt], Cable("a/out/1", "rack/in/1"))), "a").Plan!;

        Assert.Equal(["singer/1"], plan.Recovered.Select(recovered => recovered.Demand));
    }

    [Fact]
    public void A_main_is_not_brought_to_a_place_its_zone_allows_when_that_ends_in_ears()
    {
        var main = FeedTo("house", FeedRole.Main, "desk/main/1", "a", "b");
        var show = Make(Small(SmallProfiles.FreeBox, true), [main]);
        show = show with { Patch = show.Patch with { Routes = [.. show.Patch.Routes, Route("desk/main/1", "desk/transmit/8")] } };
        var plan = Loss(Ask(show), "a").Plan!;

        Assert.DoesNotContain(plan.Recovered, recovered => recovered.To.Device.Value == "b");
        Assert.Empty(plan.Steps);
    }

    [Fact]
    public void What_lost_its_only_cable_is_not_brought_to_a_bare_output()
    {
        var main = Feed("house", FeedRole.Main, "desk/main/1") with { To = [new() { Devices = [new("a"), new("b")] }] };
        var plan = Loss(Ask(Make(Small(SmallProfiles.FreeBox), [main], Cable("a/out/3", "amp/in/1"))), "a/out/3 to amp/in/1").Plan!;

        Assert.Empty(plan.Steps);
        Assert.Equal("The cable to amp/in/1 is lost.", Assert.Single(plan.Unrecovered).Reason);
    }

    [Fact]
    public void Nobodys_ears_give_way_for_a_main_whatever_the_role_says()
    {
        // Every output of the other box is taken by mixes of low priority that end in a rack.
        var main = House with
        {
            Priority = Priority.Critical,
        };
        var ears = Enumerable.Range(1, 4).Select(i => Feed($"mix-{i}", FeedRole.Monitor, $"desk/aux/{i + 4}", $"b/out/{i}") with { Priority = Priority.Low });
        var show = Make(Small(SmallProfiles.FreeBox), [main, .. ears], Cable("b/out/1-4", "rack/in/1-4"));
        show = show with
        {
            Patch = show.Patch with
            {
                Routes =
                [
                    .. show.Patch.Routes.Where(route => route.To != At("desk/transmit/5-8")),
                    Route("desk/aux/5-8", "desk/transmit/5-8"),
                    Route("b/receive/1-4", "b/out/1-4"),
                ],
            },
        };
        var plan = Loss(Ask(show), "a").Plan!;

        Assert.Empty(plan.Displaced);
        Assert.DoesNotContain(plan.Steps, step => step.Kind == FallbackStepKind.Pull);
    }
}
