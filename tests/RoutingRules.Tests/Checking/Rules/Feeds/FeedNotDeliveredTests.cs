using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Feeds.FeedNotDeliveredShows;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

public sealed class FeedNotDeliveredTests
{
    private static readonly FeedNotDelivered Rule = new();

    [Fact]
    public void A_feed_pinned_to_an_output_that_no_stream_reaches_gives_one_finding()
    {
        var show = DeskAndBox with { Feeds = [Feed("mon-1", FeedRole.Monitor, "desk/aux/1", "box/out/1") with { Name = "Vocal wedge" }] };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "Feed 'Vocal wedge' does not arrive at box/out/1: no stream reaches box/receive/1.",
            "feed=mon-1"
        );
    }

    [Fact]
    public void A_feed_that_arrives_gives_none() => Expect.None(Rule, Streamed with { Feeds = [Feed("mon-1", FeedRole.Monitor, "desk/aux/1", "box/out/1")] });

    [Fact]
    public void Neighbouring_feeds_lost_at_one_place_give_one_finding()
    {
        var show = DeskAndBox with
        {
            Feeds =
            [
                Feed("b", FeedRole.Monitor, "desk/aux/2", "box/out/2"),
                Feed("a", FeedRole.Monitor, "desk/aux/1", "box/out/1"),
                Feed("c", FeedRole.Monitor, "desk/aux/3", "box/out/3"),
            ],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/1/to/0",
            "3 feeds do not arrive: no stream reaches box/receive/1-3. Missing: 'a' at box/out/1, 'b' at box/out/2 and 'c' at box/out/3.",
            "feed=a",
            "feed=b",
            "feed=c"
        );
    }

    [Fact]
    public void Feeds_lost_at_places_apart_give_a_finding_each()
    {
        var show = DeskAndBox with { Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1", "box/out/1"), Feed("b", FeedRole.Monitor, "desk/aux/2", "box/out/3")] };

        Assert.Equal(["/feeds/0/to/0", "/feeds/1/to/0"], RuleTester.Findings(Rule, show).Select(finding => finding.Pointer));
    }

    [Fact]
    public void The_message_says_what_the_output_carries_instead()
    {
        var show = Streamed.With(Route("desk/main/1", "desk/transmit/1")) with { Feeds = [Feed("mon-1", FeedRole.Monitor, "desk/aux/1", "box/out/1")] };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "Feed 'mon-1' does not arrive at box/out/1: box/out/1 carries desk/main/1 instead.",
            "feed=mon-1"
        );
    }

    [Fact]
    public void A_run_of_feeds_displaced_by_one_gives_one_finding()
    {
        var show = Streamed.With(Route("desk/aux/2-4", "desk/transmit/1-3"), Route(null, "desk/transmit/4")) with
        {
            Feeds =
            [
                Feed("a", FeedRole.Monitor, "desk/aux/1", "box/out/1"),
                Feed("b", FeedRole.Monitor, "desk/aux/2", "box/out/2"),
                Feed("c", FeedRole.Monitor, "desk/aux/3", "box/out/3"),
            ],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "3 feeds do not arrive: box/out/1-3 carry desk/aux/2-4 instead. Missing: 'a' at box/out/1, 'b' at box/out/2 and 'c' at box/out/3.",
            "feed=a",
            "feed=b",
            "feed=c"
        );
    }

    [Theory]
    [InlineData(null, "desk/transmit/1 is set to nothing")]
    [InlineData("desk/aux/9", null)]
    public void A_cleared_slot_is_named_and_a_route_that_does_not_resolve_is_left_to_its_own_rule(string? source, string? why)
    {
        var show = Streamed.With(Route(source, "desk/transmit/1")) with { Feeds = [Feed("x", FeedRole.Monitor, "desk/aux/5", "box/out/1")] };

        var broken = show.With(Route("desk/aux/99", "desk/transmit/1"), Route("desk/aux/5-6", "desk/transmit/1"));
        var findings = RuleTester.Findings(Rule, source is null ? show : broken);

        Assert.Equal(why is null ? [] : [$"Feed 'x' does not arrive at box/out/1: {why}."], findings.Select(finding => finding.Message));
    }

    [Fact]
    public void A_feed_pinned_to_an_input_without_a_cable_says_so()
    {
        var show = Of(("desk", SmallProfiles.Console), ("amp", SmallProfiles.Amplifier)) with
        {
            Feeds = [Feed("wedge", FeedRole.Monitor, "desk/aux/1", "amp/in/2")],
        };

        Expect.One(Rule, show, Severity.Error, "/feeds/0/to/0", "Feed 'wedge' does not arrive at amp/in/2: no output is cabled to amp/in/2.", "feed=wedge");
    }

    [Fact]
    public void A_feed_pinned_to_a_cabled_input_is_followed_through_the_cable()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));
        show = show with
        {
            Rig = show.Rig with { Cables = [Cable("box/out/3", "amp/in/1")] },
            Feeds = [Feed("wedge", FeedRole.Monitor, "desk/aux/3", "amp/in/1")],
        };

        Expect.One(Rule, show, Severity.Error, "/feeds/0/to/0", "Feed 'wedge' does not arrive at amp/in/1: no stream reaches box/receive/3.", "feed=wedge");
        Expect.None(Rule, show.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")));
    }

    [Fact]
    public void Neighbouring_outputs_are_told_together_whatever_they_are_cabled_to()
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));
        show = show.With(Route("desk/aux/5-6", "desk/transmit/1-2")).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")) with
        {
            Rig = show.Rig with { Cables = [Cable("box/out/1", "amp/in/4")] },
            Feeds = [Feed("a", FeedRole.Monitor, "desk/aux/1", "amp/in/4"), Feed("b", FeedRole.Monitor, "desk/aux/2", "box/out/2")],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "2 feeds do not arrive: box/out/1-2 carry desk/aux/5-6 instead. Missing: 'a' at amp/in/4 and 'b' at box/out/2.",
            "feed=a",
            "feed=b"
        );
    }

    [Theory]
    [InlineData("desk/aux/5", "desk/aux/5 is routed nowhere")]
    [InlineData("desk/aux/1", "no stream takes desk/transmit/1")]
    [InlineData("desk/main/2", "the signal only reaches desk/out/2")]
    public void A_feed_left_to_a_device_says_where_its_bus_ends(string source, string why)
    {
        var show = DeskAndBox with { Feeds = [FeedTo("x", FeedRole.Monitor, source, "box")] };

        Expect.One(Rule, show, Severity.Error, "/feeds/0/to/0", $"Feed 'x' does not arrive at box: {why}.", "feed=x");
    }

    [Fact]
    public void A_device_without_a_line_output_and_a_zone_without_a_device_are_named()
    {
        var show = Of(("desk", SmallProfiles.Console), ("amp", SmallProfiles.Amplifier));
        show = show with
        {
            Rig = show.Rig with { Zones = [new() { Id = new("riser") }] },
            Feeds =
            [
                FeedTo("x", FeedRole.Monitor, "desk/aux/1", "amp"),
                new()
                {
                    Id = new("y"),
                    Role = FeedRole.Monitor,
                    Source = At("desk/aux/2"),
                    To = [new() { Zones = [new("riser")] }],
                },
            ],
        };

        Assert.Equal(
            ["Feed 'x' does not arrive at amp: amp has no line output.", "Feed 'y' does not arrive at zone riser: no device stands in zone riser."],
            RuleTester.Findings(Rule, show).Select(finding => finding.Message)
        );
    }

    [Fact]
    public void Two_feeds_of_one_bus_need_two_outputs()
    {
        var show = Streamed with { Feeds = [FeedTo("a", FeedRole.Monitor, "desk/aux/1", "box"), FeedTo("b", FeedRole.Monitor, "desk/aux/1", "box")] };

        Expect.One(Rule, show, Severity.Error, "/feeds/1/to/0", "Feed 'b' does not arrive at box: box/out/1 carries it, but counts for 'a' already.", "feed=b");
    }

    [Fact]
    public void A_feed_lost_at_several_places_gives_one_finding_with_every_cause()
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box)) with
        {
            Feeds = [Feed("x", FeedRole.Monitor, "desk/aux/1", "a/out/1", "b/out/2")],
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/to/0",
            "Feed 'x' does not arrive at a/out/1 or b/out/2: no stream reaches a/receive/1; no stream reaches b/receive/2.",
            "feed=x",
            "to=a/out/1",
            "to=b/out/2"
        );
    }

    [Fact]
    public void A_pair_of_which_nothing_arrives_is_one_finding_over_both_slots() =>
        Expect.One(
            Rule,
            DeskAndBox with
            {
                Feeds = [Feed("ears", FeedRole.InEar, "desk/aux/3-4", "box/out/3-4")],
            },
            Severity.Error,
            "/feeds/0/to/0",
            "Feed 'ears' does not arrive at box/out/3-4: no stream reaches box/receive/3-4.",
            "feed=ears"
        );

    [Fact]
    public void Slots_of_a_multicore_without_a_link_are_told_apart_from_streams()
    {
        var box = SmallProfiles.Box with
        {
            Id = new("test/multicore-box"),
            PortGroups = SmallProfiles
                .Box.PortGroups.Select(group => group.Kind == PortKind.Receive ? group with { Carrier = new GroupRange(new("net"), 1, 1) } : group)
                .ToValueList(),
        };
        var show = Of(("desk", SmallProfiles.Console), ("box", box)) with { Feeds = [Feed("x", FeedRole.Monitor, "desk/aux/1", "box/out/1")] };

        Expect.One(Rule, show, Severity.Error, "/feeds/0/to/0", "Feed 'x' does not arrive at box/out/1: no link brings signal to box/receive/1.", "feed=x");
        Expect.None(
            Rule,
            show with
            {
                Rig = show.Rig with
                {
                    Links =
                    [
                        new()
                        {
                            Id = new("trunk"),
                            Network = new("net"),
                            From = At("desk/net/9"),
                            To = At("box/net/1"),
                        },
                    ],
                },
            }
        );
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void Clearing_one_slot_of_a_clean_show_gives_one_finding_about_its_bus(CleanShow clean, byte choice)
    {
        var slot = choice % 4;
        var routes = clean.Show.Patch.Routes.ToArray();
        routes[slot] = routes[slot] with { From = null };

        var finding = Assert.Single(RuleTester.Findings(Rule, clean.Show with { Patch = clean.Show.Patch with { Routes = routes.ToValueList() } }));

        Assert.Equal([Entity.Of("feed", $"mix-{clean.AuxInSlot[slot]}")], finding.Entities.Where(entity => entity.Role == "feed"));
    }
}
