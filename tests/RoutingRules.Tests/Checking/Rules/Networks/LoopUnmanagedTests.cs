using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class LoopUnmanagedTests
{
    private static readonly LoopUnmanaged Rule = new();

    private static readonly Link[] Ring = [Link("l1", "desk/net/1", "a/net/1"), Link("l2", "a/net/2", "b/net/1"), Link("l3", "b/net/2", "desk/net/2")];

    [Fact]
    public void A_ring_that_nothing_controls_is_one_finding() =>
        Expect.One(
            Rule,
            Boxes("a", "b").With(Ring),
            Severity.Error,
            "/rig/links/2",
            "Links 'l1', 'l2' and 'l3' of network 'net' close a loop, and nothing keeps it from flooding.",
            "network=net",
            "link=l1",
            "link=l2",
            "link=l3"
        );

    [Theory]
    [InlineData(LoopControl.SpanningTree)]
    [InlineData(LoopControl.RingProtocol)]
    [InlineData(LoopControl.SeamlessDuplicates)]
    public void A_ring_under_control_is_none(LoopControl control)
    {
        var show = Boxes("a", "b").With(Ring);

        Expect.None(Rule, show with { Rig = show.Rig with { Networks = [show.Rig.Networks[0] with { LoopControl = control }] } });
    }

    [Fact]
    public void A_chain_is_none() => Expect.None(Rule, Boxes("a", "b").With(Ring[..2]));

    [Fact]
    public void Two_links_between_two_switches_are_a_ring() =>
        Assert.Equal(
            "Links 'l1' and 'l2' of network 'net' close a loop, and nothing keeps it from flooding.",
            Assert.Single(RuleTester.Findings(Rule, Boxes("a").With(Link("l1", "desk/net/1", "a/net/1"), Link("l2", "desk/net/2", "a/net/2")))).Message
        );

    [Fact]
    public void Jacks_that_are_not_bridged_close_no_ring() =>
        Expect.None(
            Rule,
            Boxes("a", "b")
                .With(Ring)
                .WithProfile("b", profile => profile with { PortGroups = [.. profile.PortGroups.SkipLast(1), SmallProfiles.Group("net", PortKind.Network, 2)] })
        );

    [Fact]
    public void Links_of_two_networks_close_no_ring() =>
        Expect.None(Rule, Boxes("a", "b").WithNetwork("other").With(Ring[0], Ring[1], Ring[2] with { Network = new("other") }));

    [Fact]
    public void Two_rings_are_two_findings()
    {
        var show = Of(("x", Switch), ("y", Switch), ("z", Switch))
            .With(Link("a1", "x/net/1", "y/net/1"), Link("a2", "x/net/2", "y/net/2"), Link("b1", "y/net/3", "z/net/1"), Link("b2", "y/net/4", "z/net/2"));

        Assert.Equal(
            ["a1 a2", "b1 b2"],
            RuleTester.Findings(Rule, show).Select(finding => string.Join(' ', finding.Entities.Skip(1).Select(entity => entity.Id)))
        );
    }

    // A mesh of four switches has 6 links and, as a graph of one part, 6 - 4 + 1 = 3 independent rings.
    [Fact]
    public void A_mesh_of_four_has_three_independent_rings()
    {
        var ids = new[] { "w", "x", "y", "z" };
        var links =
            from i in Enumerable.Range(0, 4)
            from j in Enumerable.Range(i + 1, 3 - i)
            select Link($"{ids[i]}{ids[j]}", $"{ids[i]}/net/{j + 1}", $"{ids[j]}/net/{i + 1}");
        var show = Of([.. ids.Select(id => (id, Switch))]).With([.. links]);

        Assert.Equal(3, RuleTester.Findings(Rule, show).Count);
        Assert.Equal(Expect.Fingerprints(Rule, show), Expect.Fingerprints(Rule, show.Reversed()));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
