using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class SampleRateMismatchTests
{
    private static readonly SampleRateMismatch Rule = new();

    private static Show Linked => Boxes("a").With(Link("l", "desk/net/1", "a/net/1")).With(Stream("s", "desk/transmit/1-4", "a/receive/1-4"));

    private static DeviceProfile Only48(DeviceProfile profile) => profile with { SampleRates = [48_000] };

    private static DeviceProfile Converting(DeviceProfile profile) =>
        profile with
        {
            PortGroups = profile.PortGroups.Select(group => group.Kind == PortKind.Receive ? group with { RateConverter = true } : group).ToValueList(),
        };

    [Fact]
    public void A_box_that_does_not_know_the_rate_of_its_network_is_told()
    {
        Expect.None(Rule, Linked.WithProfile("a", Only48).With(Clock("c", "desk")));
        Expect.One(
            Rule,
            Linked.WithProfile("a", Only48).With(Clock("c", "desk", rate: 96_000)),
            Severity.Error,
            "/rig/devices/1",
            "a runs at 48 kHz, but clock 'c', which it follows, runs at 96 kHz.",
            "device=a",
            "rate=96000"
        );
    }

    [Fact]
    public void A_leader_that_does_not_know_the_rate_of_its_clock_is_told() =>
        Assert.Equal(
            "desk",
            Assert.Single(RuleTester.Findings(Rule, Linked.WithProfile("desk", Only48).With(Clock("c", "desk", rate: 96_000)))).Entities[0].Id
        );

    [Fact]
    public void A_rate_converter_at_the_slots_lifts_it() =>
        Expect.None(Rule, Linked.WithProfile("a", profile => Converting(Only48(profile))).With(Clock("c", "desk", rate: 96_000)));

    [Fact]
    public void A_device_without_any_rates_stated_and_one_that_is_on_no_network_are_left_alone() =>
        Expect.None(Rule, Boxes("a", "b").With(Link("l", "desk/net/1", "a/net/1")).WithProfile("b", Only48).With(Clock("c", "desk", rate: 96_000)));

    /// <summary>Desk on two networks, each led by another device.</summary>
    private static Show TwoDomains(int rate) =>
        Boxes("a", "b")
            .WithNetwork("second", "d")
            .With(Clock("c", "desk"), Clock("d", "b", rate: rate))
            .With(Link("l1", "desk/net/1", "a/net/1"), Link("l2", "a/net/2", "b/net/1", "second"))
            .With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"), Stream("s2", "b/transmit/1-4", "a/receive/5-8") with { Network = new("second") });

    [Fact]
    public void A_stream_on_a_network_of_another_rate_than_its_receiver_is_told() =>
        Expect.One(
            Rule,
            TwoDomains(96_000),
            Severity.Error,
            "/patch/streams/1/to/0",
            "a receives stream 's2' on network 'second' of clock 'd' at 96 kHz, while it follows clock 'c' at 48 kHz, and no rate converter sits between.",
            "device=a",
            "network=second"
        );

    [Fact]
    public void Two_clocks_of_one_rate_drift_apart() =>
        Assert.Equal(
            "a receives stream 's2' on network 'second' of clock 'd', while it follows clock 'c': the two drift apart, and no rate converter sits between.",
            Assert.Single(RuleTester.Findings(Rule, TwoDomains(48_000))).Message
        );

    [Fact]
    public void A_converter_at_the_receiver_joins_two_domains() => Expect.None(Rule, TwoDomains(96_000).WithProfile("a", Converting));

    [Fact]
    public void Networks_that_carry_nothing_between_domains_may_meet_at_a_device() =>
        Expect.None(Rule, TwoDomains(96_000) is var show ? show.With(show.Patch.Streams[0]) : show);

    [Fact]
    public void One_device_and_network_is_one_finding_however_many_streams()
    {
        var show = TwoDomains(96_000);

        Assert.Single(
            RuleTester.Findings(Rule, show.With([.. show.Patch.Streams, show.Patch.Streams[1] with { Id = new("s3"), From = At("b/transmit/5-8") }]))
        );
    }

    [Fact]
    public void A_box_that_cannot_run_at_the_other_rate_is_told_once() =>
        Assert.Equal("rate", Assert.Single(RuleTester.Findings(Rule, TwoDomains(96_000).WithProfile("a", Only48))).Entities[1].Role);

    [Fact]
    public void A_multicore_on_another_clock_is_told()
    {
        PortGroup[] multicore =
        [
            SmallProfiles.Group("mc", PortKind.Network, 1),
            SmallProfiles.Group("mc-send", PortKind.Transmit, 4) with
            {
                Carrier = new(new("mc"), 1, 1),
            },
            SmallProfiles.Group("mc-return", PortKind.Receive, 4) with
            {
                Carrier = new(new("mc"), 1, 1),
            },
        ];
        var show = Boxes("a")
            .WithNetwork("second", "d")
            .With(Clock("c", "desk"), Clock("d", "a", rate: 96_000))
            .WithProfile("desk", profile => profile with { PortGroups = [.. profile.PortGroups, .. multicore] })
            .WithProfile("a", profile => profile with { PortGroups = [.. profile.PortGroups, .. multicore] })
            .WithNetwork("third", "c")
            .With(Link("l", "desk/mc/1", "a/mc/1", "second"), Link("k", "desk/net/1", "a/net/1", "third"));

        var findings = RuleTester.Findings(Rule, show);

        Assert.Equal(
            "desk is joined by link 'l' on network 'second' of clock 'd' at 96 kHz, while it follows clock 'c' at 48 kHz, and no rate converter sits between.",
            Assert.Single(findings).Message
        );
    }

    [Fact]
    public void Order_does_not_change_the_identity() =>
        Assert.Equal(
            Expect.Fingerprints(Rule, TwoDomains(96_000)),
            Expect.Fingerprints(
                Rule,
                TwoDomains(96_000) is var show ? show with { Patch = show.Patch with { Streams = show.Patch.Streams.Reverse().ToValueList() } } : show
            )
        );

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
