using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class RouteNotAllowedTests
{
    private static readonly RouteNotAllowed Rule = new();

    [Fact]
    public void A_route_without_a_routing_entry_gives_one_finding() =>
        Expect.One(
            Rule,
            Of(("box", SmallProfiles.Box)).With(Route("box/in/1", "box/out/1")),
            Severity.Error,
            "/patch/routes/0",
            "'box' cannot route box/in/1 to box/out/1: 'out' takes signal from 'receive'.",
            "from=box/in/1",
            "to=box/out/1"
        );

    [Fact]
    public void A_sink_that_takes_no_routes_says_so() =>
        Expect.One(
            Rule,
            Of(("amp", SmallProfiles.Amplifier)).With(Route("amp/in/1", "amp/out/1")),
            Severity.Error,
            "/patch/routes/0",
            "'amp' cannot route amp/in/1 to amp/out/1: nothing can be routed to 'out' of this device.",
            "from=amp/in/1",
            "to=amp/out/1"
        );

    [Fact]
    public void A_run_written_route_by_route_is_one_finding() =>
        Expect.One(
            Rule,
            Of(("desk", SmallProfiles.Console)).With([.. Enumerable.Range(1, 8).Select(n => Route($"desk/aux/{n}", $"desk/channel/{n}"))]),
            Severity.Error,
            "/patch/routes/0",
            "'desk' cannot route desk/aux/1-8 to desk/channel/1-8: 'channel' takes signal from 'in' and 'receive'.",
            "from=desk/aux/1-8",
            "to=desk/channel/1-8"
        );

    [Fact]
    public void Two_routes_to_the_same_sinks_are_two_findings() =>
        Assert.Equal(
            ["from=desk/aux/1-2", "from=desk/main/1-2"],
            RuleTester
                .Findings(Rule, Of(("desk", SmallProfiles.Console)).With(Route("desk/aux/1-2", "desk/channel/1-2"), Route("desk/main/1-2", "desk/channel/1-2")))
                .Select(finding => $"{finding.Entities[0].Role}={finding.Entities[0].Id}")
        );

    [Fact]
    public void Free_fixed_and_null_routes_give_none()
    {
        Expect.None(
            Rule,
            Of(("free", SmallProfiles.FreeBox)).With(Route("free/in/1", "free/out/1"), Route("free/receive/2", "free/out/2"), Route(null, "free/out/3"))
        );
        Expect.None(Rule, Of(("box", SmallProfiles.Box)).With(Route("box/receive/1", "box/out/1"), Route("box/receive/3", "box/out/2")));
    }

    [Fact]
    public void A_device_with_an_unsound_profile_is_left_to_that_rule()
    {
        var unsound = SmallProfiles.Box with { Routing = [SmallProfiles.Entry("in", "nowhere", RoutingMode.Fixed)] };

        Expect.None(Rule, Of(("box", unsound)).With(Route("box/in/1", "box/out/1")));
    }

    [Fact]
    public void A_fixed_sink_gives_no_second_finding_about_its_fixed_source() =>
        Expect.None(new RouteWithoutEffect(), Of(("box", SmallProfiles.Box)).With(Route("box/in/1", "box/out/1")));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_bus_routed_to_a_channel_gives_one(CleanShow clean, byte aux, byte channel)
    {
        var route = Route($"desk/aux/{(aux % 8) + 1}", $"desk/channel/{(channel % 8) + 1}");

        Expect.None(Rule, clean.Show);
        Assert.Equal(route.To.ToString(), Assert.Single(RuleTester.Findings(Rule, clean.Show.With([route, .. clean.Show.Patch.Routes]))).Entities[1].Id);
    }
}
