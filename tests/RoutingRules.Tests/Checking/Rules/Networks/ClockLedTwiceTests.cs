using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class ClockLedTwiceTests
{
    private static readonly ClockLedTwice Rule = new();

    private static Show Linked => Boxes("a", "b").With(Link("l", "desk/net/1", "a/net/1")).With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"));

    [Fact]
    public void A_word_clock_led_by_a_device_of_the_network_is_a_second_leader()
    {
        var show = Linked.With(Clock("net-clock", "desk"), Clock("word", "a"));

        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/rig/clocks/1/leader",
            "a leads clock 'word' but is on network 'net', which follows clock 'net-clock' led by desk.",
            "device=a",
            "network=net"
        );
        Expect.None(new SampleRateMismatch(), show);
    }

    [Fact]
    public void One_leader_and_a_clock_led_elsewhere_are_fine()
    {
        Expect.None(Rule, Linked.With(Clock("c", "desk")));
        Expect.None(Rule, Linked.With(Clock("c", "desk"), Clock("d", "b")));
        Expect.None(Rule, Linked.With(Clock("c", "desk"), Clock("d", "gone")));
    }

    [Fact]
    public void A_device_that_leads_two_clocks_is_told() =>
        Expect.One(
            Rule,
            Linked.With(Clock("c", "desk"), Clock("b", "desk", rate: 96_000)),
            Severity.Error,
            "/rig/clocks/1/leader",
            "desk leads clocks 'b' and 'c': a device runs on one clock and cannot lead both.",
            "device=desk",
            "clock=b",
            "clock=c"
        );

    [Fact]
    public void A_device_with_converters_may_lead_another_clock()
    {
        static DeviceProfile Converting(DeviceProfile profile) =>
            profile with
            {
                PortGroups = profile.PortGroups.Select(group => group.Kind == PortKind.Receive ? group with { RateConverter = true } : group).ToValueList(),
            };

        Expect.None(Rule, Linked.With(Clock("c", "desk"), Clock("d", "a")).WithProfile("a", Converting));
        Expect.None(Rule, Linked.With(Clock("c", "desk"), Clock("d", "desk")).WithProfile("desk", Converting));
    }

    [Fact]
    public void A_device_between_two_domains_is_left_to_the_rule_on_rates()
    {
        var show = Boxes("a", "b")
            .WithNetwork("second", "d")
            .With(Clock("c", "desk"), Clock("d", "a"))
            .With(Link("l", "desk/net/1", "a/net/1"), Link("k", "a/net/2", "b/net/1", "second"))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"));

        Expect.None(Rule, show);
        Assert.Single(RuleTester.Findings(new SampleRateMismatch(), show));
    }

    [Fact]
    public void Order_does_not_change_the_identity()
    {
        var show = Linked.With(Clock("c", "desk"), Clock("d", "desk"));

        Assert.Equal(
            Expect.Fingerprints(Rule, show),
            Expect.Fingerprints(Rule, show with { Rig = show.Rig with { Clocks = show.Rig.Clocks.Reverse().ToValueList() } })
        );
    }
}
