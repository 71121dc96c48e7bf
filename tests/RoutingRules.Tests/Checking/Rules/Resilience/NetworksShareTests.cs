using RoutingRules.Checking.Rules.Resilience;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Resilience;

public sealed class NetworksShareTests
{
    private static readonly NetworksShare Rule = new();

    /// <summary>Desk and box on two networks, through one switch each or through the same.</summary>
    internal static Show Two(string second, string supplyOfFirst, string supplyOfSecond)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.FreeBox), ("sw-1", NetworkShow.Switch), ("sw-2", NetworkShow.Switch))
            .WithNetwork("spare")
            .With(
                Link("a", "desk/net/1", "sw-1/net/1"),
                Link("b", "box/net/1", "sw-1/net/2"),
                Link("c", "desk/net/2", $"{second}/net/5", "spare"),
                Link("d", "box/net/2", $"{second}/net/6", "spare")
            );
        string[] supplies = ["ups", "ups", supplyOfFirst, supplyOfSecond];
        return show with
        {
            Rig = show.Rig with
            {
                Devices = show.Rig.Devices.Select((device, i) => supplies[i].Length == 0 ? device : device with { Power = [new(supplies[i])] }).ToValueList(),
            },
        };
    }

    [Fact]
    public void One_switch_for_both_is_told() =>
        Expect.One(
            Rule,
            Two("sw-1", "", ""),
            Severity.Warning,
            "/rig/networks/1",
            "Networks 'net' and 'spare' lead to the same devices, so that one can stand in for the other, but both go through 'sw-1'.",
            "network=net",
            "network=spare",
            "switch=sw-1"
        );

    [Fact]
    public void One_supply_for_the_switches_of_both_is_told()
    {
        Expect.None(Rule, Two("sw-2", "a", "b"));
        Expect.One(
            Rule,
            Two("sw-2", "a", "a"),
            Severity.Warning,
            "/rig/networks/1",
            "Networks 'net' and 'spare' lead to the same devices, so that one can stand in for the other, but both hang on supply 'a': "
                + "'sw-1' and 'sw-2' have no other.",
            "network=net",
            "network=spare",
            "supply=a"
        );
    }

    [Fact]
    public void Networks_for_two_purposes_and_supplies_not_stated_give_nothing_to_look_at()
    {
        var apart = Two("sw-2", "a", "a");

        Assert.All(
            [
                Two("sw-2", "a", ""),
                apart.With([.. apart.Rig.Links.Take(3)]),
                apart with
                {
                    Rig = apart.Rig with { Networks = [apart.Rig.Networks[0], apart.Rig.Networks[1] with { Transport = Transport.AvtpClassA }] },
                },
            ],
            show => Assert.Equal(RuleStatus.NotApplicable, Assert.Single(RuleTester.Run(Rule, show).Rules).Status)
        );
    }
}
