using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class RouteDanglingTests
{
    private static readonly RouteDangling Rule = new();

    private static Show Base => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.FreeBox), ("far", SmallProfiles.Console));

    [Fact]
    public void A_route_from_an_empty_slot_gives_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/receive/5", "desk/channel/1")),
            Severity.Warning,
            "/patch/routes/0",
            "desk/channel/1 is routed from an empty source: no stream fills desk/receive/5.",
            "end=desk/receive/5"
        );

    [Fact]
    public void A_run_of_empty_slots_is_one_finding_however_it_is_scattered()
    {
        Expect.One(
            Rule,
            Base.With([.. Enumerable.Range(1, 8).Select(n => Route($"desk/receive/{n}", $"desk/channel/{n}"))]),
            Severity.Warning,
            "/patch/routes/0",
            "desk/channel/1-8 are routed from an empty source: no stream fills desk/receive/1-8.",
            "end=desk/receive/1-8"
        );
        Expect.One(
            Rule,
            Base.With(Route("desk/receive/1", "desk/channel/5"), Route("desk/receive/2", "desk/channel/1")),
            Severity.Warning,
            "/patch/routes/0",
            "desk/channel/1 and desk/channel/5 are routed from an empty source: no stream fills desk/receive/1-2.",
            "end=desk/receive/1-2"
        );
    }

    [Fact]
    public void The_end_of_the_chain_is_named_and_not_the_slot_in_between()
    {
        var show = Base.With(Stream("s1", "far/transmit/5-8", "desk/receive/1-4")).With(Route("desk/receive/1", "desk/channel/3"));

        Expect.One(
            Rule,
            show,
            Severity.Warning,
            "/patch/routes/0",
            "desk/channel/3 is routed from an empty source: nothing is routed to far/transmit/5.",
            "end=far/transmit/5"
        );
        Expect.One(
            Rule,
            show.With(Stream("s1", "far/transmit/1-4", "desk/receive/1-4")).With(Route(null, "far/transmit/1"), Route("desk/receive/1", "desk/channel/3")),
            Severity.Warning,
            "/patch/routes/1",
            "desk/channel/3 is routed from an empty source: a route sets far/transmit/1 to nothing.",
            "end=far/transmit/1"
        );
    }

    [Fact]
    public void The_last_slot_of_one_group_and_the_first_of_the_next_are_no_run() =>
        Assert.Equal(
            ["far/receive/1", "far/transmit/8"],
            RuleTester
                .Findings(
                    Rule,
                    Base.With(Stream("s1", "far/transmit/5-8", "desk/receive/1-4"))
                        .With(Route("far/receive/1", "far/channel/1"), Route("desk/receive/4", "desk/channel/1"))
                )
                .Select(finding => finding.Entities[0].Id)
        );

    [Fact]
    public void A_slot_of_a_multicore_without_a_link_says_so()
    {
        var console = SmallProfiles.Console with
        {
            PortGroups =
            [
                .. SmallProfiles.Console.PortGroups.Select(group => group.Id.Value == "receive" ? group with { Carrier = new(new("net"), 1, 1) } : group),
            ],
        };

        Expect.One(
            Rule,
            Of(("desk", console)).With(Route("desk/receive/5", "desk/channel/1")),
            Severity.Warning,
            "/patch/routes/0",
            "desk/channel/1 is routed from an empty source: no link brings signal to desk/receive/5.",
            "end=desk/receive/5"
        );
    }

    [Fact]
    public void Routes_from_real_sources_give_none()
    {
        var show = Base.With(Stream("s1", "box/transmit/1-4", "desk/receive/1-4"));
        Expect.None(Rule, show.With(Route("box/in/1", "box/transmit/1"), Route("desk/receive/1", "desk/channel/3"), Route("desk/in/1", "desk/channel/4")));
    }

    [Fact]
    public void Factory_routes_from_empty_slots_and_null_routes_give_none() => Expect.None(Rule, Base.With(Route(null, "desk/channel/1-8")));

    [Fact]
    public void A_silent_output_is_left_to_its_own_rule()
    {
        var show = Base.With(Route("box/receive/1", "box/out/1"));

        Expect.None(Rule, show);
        Assert.Single(RuleTester.Findings(new OutputOrphaned(), show));
    }

    [Fact]
    public void A_route_whose_silence_comes_out_at_a_pinned_output_is_left_to_the_rule_about_feeds()
    {
        var show = Of(("desk", SmallProfiles.Console), ("mid", SmallProfiles.Console), ("box", SmallProfiles.Box)) with
        {
            Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", "box/out/1")],
        };
        var relay = SmallProfiles.FreeBox with { Id = new("test/relay"), Routing = [SmallProfiles.Entry("receive", "transmit", RoutingMode.Free)] };
        show = show with
        {
            Rig = show.Rig with
            {
                Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Profile = relay.Id }, show.Rig.Devices[2]],
                Profiles = [.. show.Rig.Profiles, relay],
            },
        };
        show = show.With(Stream("s1", "mid/transmit/1-4", "box/receive/1-4")).With(Route("mid/receive/1", "mid/transmit/1"));

        Expect.None(Rule, show);
        Expect.None(new OutputOrphaned(), show);
        Assert.Equal("mix", Assert.Single(RuleTester.Findings(new FeedNotDelivered(), show)).Entities[0].Id);
        Assert.Single(RuleTester.Findings(Rule, show with { Feeds = [] }));
    }

    [Fact]
    public void What_other_rules_explain_gives_none()
    {
        var route = Route("desk/receive/1", "desk/channel/3");
        Expect.None(Rule, Base.With(Stream("s1", "far/transmit/1-4", "desk/receive/1-3")).With(route));
        Expect.None(Rule, Base.With(Stream("s1", "gone/transmit/1-4", "desk/receive/1-4")).With(route));
        Expect.None(
            Rule,
            Base.With(Stream("s1", "far/transmit/1-4", "desk/receive/1-4")).With(Route(null, "far/transmit/1"), Route("far/aux/1", "far/transmit/1"), route)
        );
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_route_from_an_empty_slot_gives_one(CleanShow clean, byte slot, byte channel)
    {
        var broken = Route($"desk/receive/{(slot % 8) + 1}", $"desk/channel/{(channel % 8) + 1}");

        Expect.None(Rule, clean.Show);
        Assert.Equal(
            $"desk/receive/{(slot % 8) + 1}",
            Assert
                .Single(RuleTester.Findings(Rule, clean.Show with { Patch = clean.Show.Patch with { Routes = [.. clean.Show.Patch.Routes, broken] } }))
                .Entities[0]
                .Id
        );
    }
}
