using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class ClockLeaderMissingTests
{
    private static readonly ClockLeaderMissing Rule = new();

    private static Show Linked => Boxes("a", "b").With(Link("l", "desk/net/1", "a/net/1")).With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"));

    [Fact]
    public void A_network_that_carries_a_stream_without_a_clock_is_told() =>
        Expect.One(
            Rule,
            Linked,
            Severity.Error,
            "/rig/networks/0",
            "Network 'net' carries a stream but names no clock, so nobody is set to lead.",
            "network=net"
        );

    [Fact]
    public void A_network_that_carries_nothing_needs_no_clock()
    {
        Expect.None(Rule, Boxes("a"));
        Expect.None(Rule, Boxes("a").With(Stream("s", "desk/transmit/1-4"), Stream("t", "desk/transmit/5-8", "gone/receive/1-4")));
    }

    [Fact]
    public void A_leader_on_the_network_is_enough() => Assert.All(["desk", "a"], leader => Expect.None(Rule, Linked.With(Clock("c", leader))));

    [Fact]
    public void A_leader_that_no_link_joins_is_told() =>
        Expect.One(
            Rule,
            Linked.With(Clock("c", "b")),
            Severity.Error,
            "/rig/networks/0/clock",
            "Network 'net' follows clock 'c', but b, which leads it, is not joined to that network.",
            "network=net",
            "clock=c"
        );

    [Fact]
    public void A_leader_that_is_joined_by_another_network_of_the_same_clock_is_enough()
    {
        var show = Linked.WithNetwork("second", "c").With(Clock("c", "b"));

        Expect.None(Rule, show.With([.. show.Rig.Links, Link("k", "a/net/2", "b/net/1", "second")]));
        Assert.Single(
            RuleTester.Findings(
                Rule,
                Linked.WithNetwork("second").With(Clock("c", "b")) is var apart
                    ? apart.With([.. apart.Rig.Links, Link("k", "a/net/2", "b/net/1", "second")])
                    : apart
            )
        );
    }

    [Fact]
    public void Without_links_a_leader_with_a_jack_is_enough()
    {
        var show = Boxes("a", "b").With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"));

        Expect.None(Rule, show.With(Clock("c", "b")));
        Assert.Single(
            RuleTester.Findings(Rule, show.With(Clock("c", "b")).WithProfile("b", profile => profile with { PortGroups = [.. profile.PortGroups.SkipLast(1)] }))
        );
    }

    [Fact]
    public void What_does_not_resolve_is_told_elsewhere()
    {
        Expect.None(Rule, Linked.With(Clock("c", "gone")));
        Expect.None(Rule, Linked with { Rig = Linked.Rig with { Networks = [Linked.Rig.Networks[0] with { Clock = new("gone") }] } });
        Expect.None(Rule, Linked.With(Clock("c", "b")).With(Link("l", "desk/net/1", "a/net/1"), Link("k", "a/net/2", "b/nit/1")));
    }

    [Property]
    public Property Taking_the_clock_off_gives_exactly_one_finding_where_streams_travel() =>
        Prop.ForAll(
            ShowArbitraries.Clean(),
            clean =>
            {
                var show = clean.Show;
                var silent = show with { Rig = show.Rig with { Networks = [show.Rig.Networks[0] with { Clock = null }] } };

                Expect.None(Rule, show);
                Assert.Equal(show.Patch.Streams.IsEmpty ? 0 : 1, RuleTester.Findings(Rule, silent).Count);
            }
        );
}
