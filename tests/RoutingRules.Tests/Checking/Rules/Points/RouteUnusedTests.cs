using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class RouteUnusedTests
{
    private static readonly RouteUnused Rule = new();

    private static Show Base => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box)).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"));

    [Fact]
    public void A_route_to_a_slot_that_no_stream_takes_gives_one_note() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/aux/5", "desk/transmit/5")),
            Severity.Note,
            "/patch/routes/0",
            "desk/aux/5 is routed to desk/transmit/5, but no stream takes it along.",
            "slot=desk/transmit/5"
        );

    [Fact]
    public void A_run_is_one_note() =>
        Expect.One(
            Rule,
            Base.With([.. Enumerable.Range(3, 6).Select(n => Route($"desk/aux/{n}", $"desk/transmit/{n}"))]),
            Severity.Note,
            "/patch/routes/2",
            "desk/aux/5-8 are routed to desk/transmit/5-8, but no stream takes them along.",
            "slot=desk/transmit/5-8"
        );

    [Fact]
    public void A_multicore_jack_without_a_link_says_so()
    {
        var console = SmallProfiles.Console with
        {
            PortGroups =
            [
                .. SmallProfiles.Console.PortGroups.Select(group => group.Id.Value == "transmit" ? group with { Carrier = new(new("net"), 1, 1) } : group),
            ],
        };

        Expect.One(
            Rule,
            Of(("desk", console)).With(Route("desk/aux/5", "desk/transmit/5")),
            Severity.Note,
            "/patch/routes/0",
            "desk/aux/5 is routed to desk/transmit/5, but no link is plugged there.",
            "slot=desk/transmit/5"
        );
    }

    [Fact]
    public void Slots_that_travel_factory_routes_and_other_sinks_give_none() =>
        Expect.None(
            Rule,
            Base.With(
                Route("desk/aux/8", "desk/transmit/1"),
                Route("desk/aux/1", "desk/out/1"),
                Route("desk/in/1", "desk/channel/1"),
                Route(null, "desk/transmit/6")
            )
        );

    [Fact]
    public void A_stream_without_receiver_or_with_a_broken_one_is_left_to_its_rules()
    {
        var routed = Base.With(Route("desk/aux/5", "desk/transmit/5"));
        Expect.None(Rule, routed.With(Stream("s2", "desk/transmit/5-8")));
        Expect.None(Rule, routed.With(Stream("s2", "desk/transmit/5-8", "gone/receive/1-4")));
        Expect.None(Rule, routed.With(Stream("s2", "desk/transmit/5-12", "box/receive/1-8")));
    }

    [Fact]
    public void A_slot_that_a_feed_or_a_line_asks_for_gives_none()
    {
        var routed = Base.With(Route("desk/aux/5", "desk/transmit/5"));
        Expect.None(Rule, routed with { Feeds = [Feed("to-truck", FeedRole.Broadcast, "desk/aux/5", "desk/transmit/5")] });
        Expect.None(
            Rule,
            Of(("free", SmallProfiles.FreeBox)).With(Route("free/in/1", "free/transmit/1")) with
            {
                Lines = [Line("kick", "free/in/1", "free/transmit/1")],
            }
        );
    }

    [Fact]
    public void A_feed_that_is_missed_is_left_to_the_feed_rules()
    {
        var show = Base.With(Route("desk/aux/5", "desk/transmit/5")) with { Feeds = [FeedTo("mix", FeedRole.Monitor, "desk/aux/5", "box")] };

        Expect.None(Rule, show);
        Assert.Single(RuleTester.Findings(new FeedNotDelivered(), show));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void In_a_clean_show_the_only_unused_slots_are_those_of_the_block_nobody_receives(CleanShow clean)
    {
        var slots = RuleTester
            .Findings(Rule, clean.Show)
            .Select(finding => At(finding.Entities[0].Id))
            .SelectMany(range => Enumerable.Range(range.First, range.Width))
            .Order();

        Assert.Equal(clean.BoxesOfBlock[1].Length == 0 ? [5, 6, 7, 8] : [], slots);
    }
}
