using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Points;

public sealed class SinkClaimedTwiceTests
{
    private static readonly SinkClaimedTwice Rule = new();

    private static Show Base => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box), ("amp", SmallProfiles.Amplifier));

    private static Show WithCables(params Cable[] cables) => Base with { Rig = Base.Rig with { Cables = cables.ToValueList() } };

    [Fact]
    public void Two_routes_to_one_sink_give_one_finding() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/aux/1", "desk/transmit/1"), Route("desk/main/1", "desk/transmit/1")),
            Severity.Error,
            "/patch/routes/1",
            "desk/transmit/1 gets signal twice: a route from desk/aux/1 and a route from desk/main/1. The first one counts.",
            "sink=desk/transmit/1"
        );

    [Fact]
    public void Two_cables_into_one_input_give_one_finding() =>
        Expect.One(
            Rule,
            WithCables(Cable("desk/out/1-2", "amp/in/1-2"), Cable("box/out/1", "amp/in/2")),
            Severity.Error,
            "/rig/cables/1",
            "amp/in/2 gets signal twice: the cable from desk/out/2 and the cable from box/out/1. The first one counts.",
            "sink=amp/in/2"
        );

    [Fact]
    public void A_route_and_one_that_clears_contradict_each_other() =>
        Expect.One(
            Rule,
            Base.With(Route(null, "desk/transmit/1"), Route("desk/main/1", "desk/transmit/1")),
            Severity.Error,
            "/patch/routes/1",
            "desk/transmit/1 gets signal twice: a route that clears it and a route from desk/main/1. The first one counts.",
            "sink=desk/transmit/1"
        );

    [Fact]
    public void Two_links_at_one_multicore_jack_give_one_finding_for_all_slots()
    {
        var console = SmallProfiles.Console with
        {
            PortGroups =
            [
                .. SmallProfiles.Console.PortGroups.Select(group =>
                    group.Id.Value is "transmit" or "receive" ? group with { Carrier = new(new("net"), 1, 1) } : group
                ),
            ],
        };
        var show = Of(("a", console), ("b", console), ("c", console));
        show = show with
        {
            Rig = show.Rig with
            {
                Links =
                [
                    new()
                    {
                        Id = new("l1"),
                        Network = new("net"),
                        From = At("a/net/1"),
                        To = At("c/net/1"),
                    },
                    new()
                    {
                        Id = new("l2"),
                        Network = new("net"),
                        From = At("b/net/1"),
                        To = At("c/net/1"),
                    },
                ],
            },
        };

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/rig/links/1",
            "c/receive/1-8 get signal twice: link 'l1' (slots a/transmit/1-8) and link 'l2' (slots b/transmit/1-8). The first one counts.",
            "sink=c/receive/1-8"
        );
    }

    [Fact]
    public void Neighbouring_sinks_claimed_from_here_and_there_are_findings_of_their_own() =>
        Assert.Equal(
            ["sink=amp/in/1", "sink=amp/in/2"],
            RuleTester
                .Findings(Rule, WithCables(Cable("desk/out/1-2", "amp/in/1-2"), Cable("box/out/8", "amp/in/1"), Cable("box/out/3", "amp/in/2")))
                .Select(finding => $"{finding.Entities[0].Role}={finding.Entities[0].Id}")
        );

    [Fact]
    public void A_doubled_run_is_one_finding_in_any_order_of_routes()
    {
        var routes = Enumerable
            .Range(1, 4)
            .SelectMany(n => new[] { Route($"desk/aux/{n}", $"desk/transmit/{n}"), Route($"desk/aux/{n + 4}", $"desk/transmit/{n}") })
            .ToArray();

        Assert.Equal("sink=desk/transmit/1-4", Names(Base.With(routes)));
        Assert.Equal("sink=desk/transmit/1-4", Names(Base.With([.. routes.Reverse()])));
    }

    [Fact]
    public void Three_claims_on_one_sink_are_one_finding() =>
        Assert.Equal(
            "sink=desk/transmit/1",
            Names(Base.With(Route("desk/aux/1", "desk/transmit/1"), Route("desk/aux/2", "desk/transmit/1"), Route("desk/aux/3", "desk/transmit/1")))
        );

    [Fact]
    public void The_same_route_written_twice_is_milder() =>
        Expect.One(
            Rule,
            Base.With(Route("desk/aux/1", "desk/transmit/1"), Route("desk/aux/1", "desk/transmit/1")),
            Severity.Warning,
            "/patch/routes/1",
            "desk/transmit/1 is patched twice in the same way: a route from desk/aux/1 and a route from desk/aux/1. One of them is enough.",
            "sink=desk/transmit/1"
        );

    [Fact]
    public void One_source_to_many_sinks_and_a_route_over_a_factory_route_give_none() =>
        Expect.None(Rule, Base.With(Route("desk/aux/1", "desk/transmit/1"), Route("desk/aux/1", "desk/transmit/2"), Route("desk/aux/1", "desk/out/1")));

    [Fact]
    public void Two_streams_at_one_receive_slot_are_left_to_the_stream_rules() =>
        Expect.None(Rule, Base.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8", "box/receive/1-4")));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_has_none_and_one_more_route_to_a_used_slot_gives_one(CleanShow clean, byte slot)
    {
        var number = (slot % 8) + 1;
        var routes = clean.Show.Patch.Routes;
        var doubled = clean.Show with { Patch = clean.Show.Patch with { Routes = [Route("desk/main/1", $"desk/transmit/{number}"), .. routes] } };

        Expect.None(Rule, clean.Show);
        Assert.Equal($"sink=desk/transmit/{number}", Names(doubled));
    }

    private static string Names(Show show)
    {
        var entity = Assert.Single(Assert.Single(RuleTester.Findings(Rule, show)).Entities.ToArray());
        return $"{entity.Role}={entity.Id}";
    }
}
