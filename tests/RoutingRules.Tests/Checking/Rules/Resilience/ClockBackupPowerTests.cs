using RoutingRules.Checking.Rules.Resilience;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Resilience;

public sealed class ClockBackupPowerTests
{
    private static readonly ClockBackupPower Rule = new();

    private static Show Powered(string[] desk, string[] a, string[] b)
    {
        var show = Boxes("a", "b").With(Clock("c1", "desk", "a")).With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"));
        var supplies = new[] { desk, a, b };
        return show with
        {
            Rig = show.Rig with
            {
                Devices = show
                    .Rig.Devices.Select((device, i) => device with { Power = supplies[i].Select(name => new Id<PowerSource>(name)).ToValueList() })
                    .ToValueList(),
            },
        };
    }

    [Fact]
    public void A_backup_on_the_leaders_supply_is_told()
    {
        Expect.One(
            Rule,
            Powered(["stage"], ["stage"], ["house"]),
            Severity.Warning,
            "/rig/clocks/0/backup",
            "a takes over clock 'c1' from desk, but both hang on supply 'stage' alone.",
            "clock=c1",
            "supply=stage"
        );
        Expect.None(Rule, Powered(["stage"], ["house"], ["house"]));
        Expect.None(Rule, Powered(["stage", "ups"], ["stage"], ["house"]));
    }

    [Fact]
    public void A_rig_of_one_supply_and_devices_that_name_none_give_nothing_to_look_at() =>
        Assert.All(
            [Powered(["stage"], ["stage"], ["stage"]), Powered(["stage"], [], ["house"]), Powered([], [], [])],
            show => Assert.Equal(RuleStatus.NotApplicable, Assert.Single(RuleTester.Run(Rule, show).Rules).Status)
        );
}
