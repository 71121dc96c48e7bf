using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class PacketTooLargeTests
{
    private static readonly PacketTooLarge Rule = new();

    private static Show Wide(int channels)
    {
        var profile = new DeviceProfile
        {
            Id = new("test/wide"),
            Kind = DeviceKind.Recorder,
            Name = "Wide",
            PortGroups =
            [
                SmallProfiles.Group("transmit", PortKind.Transmit, 200),
                SmallProfiles.Group("receive", PortKind.Receive, 200),
                SmallProfiles.Network(1),
            ],
        };
        return Of(("one", profile), ("two", profile)).With(Stream("s", $"one/transmit/1-{channels}", $"two/receive/1-{channels}"));
    }

    // 48 samples x 11 channels x 3 octets = 1584; 10 channels make exactly 1440 (AES67, clauses 6 and 7, from memory).
    [Fact]
    public void Eleven_channels_of_24_bit_at_one_millisecond_do_not_fit()
    {
        Expect.None(Rule, Wide(10));
        Expect.One(
            Rule,
            Wide(11),
            Severity.Error,
            "/patch/streams/0/from",
            "Stream 's' of 11 channels makes packets of 1584 octets of audio on network 'net', but 1440 octets fit: at most 10 channels fit.",
            "stream=s"
        );
    }

    [Fact]
    public void A_shorter_packet_time_makes_room_and_a_longer_one_takes_it()
    {
        Expect.None(Rule, Wide(80).With(Transport.RtpL24, 125));
        Assert.Single(RuleTester.Findings(Rule, Wide(81).With(Transport.RtpL24, 125)));
        Assert.Single(RuleTester.Findings(Rule, Wide(3).With(Transport.RtpL24, 4000)));
        Expect.None(Rule, Wide(2).With(Transport.RtpL24, 4000));
    }

    // (1500 - 24) / (6 samples x 4 octets) = 61.5.
    [Fact]
    public void Class_a_takes_61_channels()
    {
        Expect.None(Rule, Wide(61).With(Transport.AvtpClassA));
        Assert.Single(RuleTester.Findings(Rule, Wide(62).With(Transport.AvtpClassA)));
    }

    [Fact]
    public void Twice_the_rate_takes_half_the_channels()
    {
        var clock = NetworkShow.Clock("c", "one", rate: 96_000);

        Expect.None(Rule, Wide(5).With(clock));
        Assert.EndsWith("at most 5 channels fit.", Assert.Single(RuleTester.Findings(Rule, Wide(6).With(clock))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_not_one_channel_fits_the_message_says_so() =>
        Assert.EndsWith(
            "not even one channel fits.",
            Assert.Single(RuleTester.Findings(Rule, Wide(1).With(Transport.RtpL24, 20_000))).Message,
            StringComparison.Ordinal
        );

    [Fact]
    public void A_transport_that_is_not_known_is_not_decided()
    {
        var result = RuleTester.Run(Rule, Wide(4).With(new Transport("odd")));

        Assert.Empty(result.Findings);
        Assert.Equal("How much network 'net' carries is not known: the engine has no numbers for transport 'odd'.", Assert.Single(result.Undecided).Reason);
    }

    [Fact]
    public void A_network_that_does_not_exist_is_told_elsewhere() =>
        Expect.None(Rule, Wide(12) with { Patch = new() { Streams = [Wide(12).Patch.Streams[0] with { Network = new("gone") }] } });

    [Fact]
    public void A_digital_multicore_has_no_packets() => Expect.None(Rule, Wide(64).With(Transport.PointToPoint));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
