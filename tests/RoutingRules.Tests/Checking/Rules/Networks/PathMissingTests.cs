using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Feeds;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Checking.Rules.Points;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class PathMissingTests
{
    private static readonly PathMissing Rule = new();

    private static readonly AudioStream[] Streams =
    [
        Stream("s1", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4"),
        Stream("s2", "b/transmit/1-4", "desk/receive/1-4"),
    ];

    [Fact]
    public void A_box_that_no_link_joins_is_one_finding_for_both_directions() =>
        Expect.One(
            Rule,
            Boxes("a", "b").With(Link("l1", "desk/net/1", "a/net/1")).With(Streams),
            Severity.Error,
            "/patch/streams/0/to/1",
            "Streams 's1' and 's2' cannot get from desk to b and from b to desk on network 'net': no links lead there.",
            "network=net",
            "device=a",
            "device=b"
        );

    [Fact]
    public void A_chain_of_links_through_another_box_is_a_way() =>
        Expect.None(Rule, Boxes("a", "b").With(Link("l1", "desk/net/1", "a/net/1"), Link("l2", "a/net/2", "b/net/1")).With(Streams));

    [Fact]
    public void Jacks_that_are_not_bridged_pass_nothing_on()
    {
        var show = Boxes("a", "b")
            .With(Link("l1", "desk/net/1", "a/net/1"), Link("l2", "a/net/2", "b/net/1"))
            .With(Streams)
            .WithProfile("a", profile => profile with { PortGroups = [.. profile.PortGroups.SkipLast(1), SmallProfiles.Group("net", PortKind.Network, 2)] });

        Assert.Equal(
            "Streams 's1' and 's2' cannot get from desk to b and from b to desk on network 'net': no links lead there.",
            Assert.Single(RuleTester.Findings(Rule, show)).Message
        );
    }

    [Fact]
    public void A_network_without_links_joins_all_that_have_a_jack()
    {
        var show = Boxes("a", "b").With(Streams);

        Expect.None(Rule, show);
        Expect.One(
            Rule,
            show.WithProfile("b", profile => profile with { PortGroups = [.. profile.PortGroups.SkipLast(1)] }),
            Severity.Error,
            "/patch/streams/0/to/1",
            "Streams 's1' and 's2' cannot get from desk to b and from b to desk on network 'net': b has no network jack.",
            "network=net",
            "device=b",
            "device=desk"
        );
    }

    [Fact]
    public void A_link_of_another_network_is_no_way()
    {
        var show = Boxes("a").WithNetwork("other").With(Link("l0", "desk/net/1", "a/net/1", "other"), Link("l1", "desk/net/1", "gone/net/1"));

        Expect.None(Rule, show.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4")));
        Assert.Single(
            RuleTester.Findings(
                Rule,
                Boxes("a", "b")
                    .WithNetwork("other")
                    .With(Link("l0", "desk/net/1", "a/net/1", "other"), Link("l1", "desk/net/1", "b/net/1"))
                    .With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"))
            )
        );
    }

    [Fact]
    public void Where_a_link_of_the_devices_does_not_resolve_another_rule_speaks() =>
        Expect.None(Rule, Boxes("a", "b").With(Link("l1", "desk/net/1", "a/net/1"), Link("l2", "a/net/2", "b/nit/1")).With(Streams));

    [Fact]
    public void A_broken_link_elsewhere_hides_nothing() =>
        Assert.Single(
            RuleTester.Findings(Rule, Boxes("a", "b", "c").With(Link("l1", "desk/net/1", "a/net/1"), Link("l2", "c/net/2", "c/net/1")).With(Streams))
        );

    [Fact]
    public void Rules_on_feeds_leave_a_missing_link_to_this_one()
    {
        var show = Boxes("a", "b")
            .With(Link("l1", "desk/net/1", "a/net/1"))
            .With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4"))
            .With(Route("b/receive/1", "b/out/1")) with
        {
            Feeds = [Feed("mon", FeedRole.Monitor, "desk/aux/1", "b/out/1")],
        };

        Assert.Single(RuleTester.Findings(Rule, show));
        Expect.None(new FeedNotDelivered(), show);
        Expect.None(new FanOutLost(), show);
        Expect.None(new OutputOrphaned(), show);
    }

    [Fact]
    public void Order_does_not_change_the_identity()
    {
        var show = Boxes("a", "b").With(Link("l1", "desk/net/1", "a/net/1")).With(Streams);

        Assert.Equal(Expect.Fingerprints(Rule, show), Expect.Fingerprints(Rule, show.Reversed()));
    }

    [Property]
    public Property Taking_any_link_out_of_a_chain_gives_exactly_one_finding() =>
        Prop.ForAll(
            Gen.Choose(0, 3).ToArbitrary(),
            cut =>
            {
                var chain = new[]
                {
                    Link("l1", "desk/net/1", "a/net/1"),
                    Link("l2", "a/net/2", "b/net/1"),
                    Link("l3", "b/net/2", "c/net/1"),
                    Link("l4", "c/net/2", "d/net/1"),
                };
                var show = Boxes("a", "b", "c", "d").With(Stream("s", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4", "c/receive/1-4", "d/receive/1-4"));

                Expect.None(Rule, show.With(chain));
                Assert.Single(RuleTester.Findings(Rule, show.With([.. chain.Where((_, position) => position != cut)])));
            }
        );

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
