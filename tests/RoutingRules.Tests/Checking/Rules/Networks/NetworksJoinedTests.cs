using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class NetworksJoinedTests
{
    private static readonly NetworksJoined Rule = new();

    private static readonly Link[] Links = [Link("p", "desk/net/1", "a/net/1"), Link("s", "desk/net/2", "b/net/1", "second")];

    [Fact]
    public void Two_networks_at_bridged_jacks_are_one_finding() =>
        Expect.One(
            Rule,
            Boxes("a", "b").WithNetwork("second").With(Links),
            Severity.Error,
            "/rig/links/1",
            "desk joins networks 'net' and 'second' on one switch: link 'p' of network 'net' at desk/net/1 and link 's' of network 'second' at desk/net/2.",
            "device=desk",
            "network=net",
            "network=second"
        );

    [Fact]
    public void Jacks_of_their_own_keep_networks_apart() =>
        Expect.None(
            Rule,
            Boxes("a", "b")
                .WithNetwork("second")
                .With(Links)
                .WithProfile(
                    "desk",
                    profile => profile with { PortGroups = [.. profile.PortGroups.SkipLast(1), SmallProfiles.Group("net", PortKind.Network, 2)] }
                )
        );

    [Fact]
    public void A_device_with_two_switches_names_a_jack_for_each()
    {
        var show = Of(("x", Switch), ("y", Switch))
            .WithNetwork("second")
            .With(
                Link("l1", "x/net/1", "y/net/1"),
                Link("l2", "x/net/2", "y/net/3", "second"),
                Link("l3", "x/net/5", "y/net/5"),
                Link("l4", "x/net/6", "y/net/7", "second")
            )
            .WithProfile("x", profile => profile with { PortGroups = [Halves] })
            .WithProfile("y", profile => profile with { PortGroups = [SmallProfiles.Group("net", PortKind.Network, 8)] });

        Assert.Equal(
            ["device=x jack=x/net/1 network=net network=second", "device=x jack=x/net/5 network=net network=second"],
            RuleTester.Findings(Rule, show).Select(finding => string.Join(' ', finding.Entities.Select(entity => $"{entity.Role}={entity.Id}")))
        );
    }

    [Fact]
    public void Order_does_not_change_the_identity()
    {
        var show = Boxes("a", "b").WithNetwork("second").With(Links);

        Assert.Equal(Expect.Fingerprints(Rule, show), Expect.Fingerprints(Rule, show.Reversed()));
    }

    [Fact]
    public void Links_that_do_not_resolve_join_nothing() =>
        Expect.None(Rule, Boxes("a", "b").WithNetwork("second").With(Links[0], Link("s", "desk/net/3", "b/net/1", "second")));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    private static PortGroup Halves =>
        SmallProfiles.Group("net", PortKind.Network, 8) with
        {
            Bridged = [new() { Jacks = new(1, 4) }, new() { Jacks = new(5, 8) }],
        };
}
