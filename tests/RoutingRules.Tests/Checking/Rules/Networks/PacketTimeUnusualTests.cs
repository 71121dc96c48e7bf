using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Networks;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

public sealed class PacketTimeUnusualTests
{
    private static readonly PacketTimeUnusual Rule = new();

    // AES67, clause 7.2 (from memory): 125, 250, 333 1/3 microseconds, 1 and 4 ms.
    [Fact]
    public void A_packet_time_of_no_profile_is_told()
    {
        Assert.All([125, 250, 333, 334, 1000, 4000], time => Expect.None(Rule, Boxes("a").With(Transport.RtpL24, time)));
        Expect.One(
            Rule,
            Boxes("a").With(Transport.RtpL24, 500),
            Severity.Warning,
            "/rig/networks/0/packetMicroseconds",
            "Network 'net' has packets of 500 \u00b5s, but AES67 and ST 2110-30 know 125, 250, 333, 1000 and 4000 \u00b5s.",
            "network=net"
        );
    }

    [Theory]
    [InlineData("avtp-class-a", 125, 250, "class A sends every 125 \u00b5s.")]
    [InlineData("avtp-class-b", 250, 125, "class B sends every 250 \u00b5s.")]
    public void A_class_has_one_interval(string transport, int right, int wrong, string said)
    {
        Expect.None(Rule, Boxes("a").With(new Transport(transport), right));
        Assert.EndsWith(said, Assert.Single(RuleTester.Findings(Rule, Boxes("a").With(new Transport(transport), wrong))).Message, StringComparison.Ordinal);
    }

    // 48 samples at 44.1 kHz last 1088.4 microseconds.
    [Theory]
    [InlineData(44_100, 1088, 0)]
    [InlineData(44_100, 1089, 0)]
    [InlineData(44_100, 1090, 1)]
    [InlineData(44_100, 136, 0)]
    [InlineData(48_000, 1088, 1)]
    public void At_44_kilohertz_as_many_samples_last_longer(int rate, int time, int findings) =>
        Assert.Equal(findings, RuleTester.Findings(Rule, Boxes("a").With(Clock("c", "desk", rate: rate)).With(Transport.RtpL24, time)).Count);

    [Fact]
    public void What_is_not_stated_or_not_known_gives_nothing_to_look_at() =>
        Assert.All(
            [Boxes("a").With(Transport.RtpL24), Boxes("a").With(new Transport("odd"), 77), Boxes("a").With(Transport.PointToPoint, 77)],
            show => Assert.Equal(RuleStatus.NotApplicable, Assert.Single(RuleTester.Run(Rule, show).Rules).Status)
        );

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
