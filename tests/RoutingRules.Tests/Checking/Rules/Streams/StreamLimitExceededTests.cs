using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class StreamLimitExceededTests
{
    private static readonly StreamLimitExceeded Rule = new();

    private static DeviceProfile Limited(int? sent, int? received) =>
        SmallProfiles.Console with
        {
            Id = new("test/limited"),
            Limits = new() { StreamsSent = sent, StreamsReceived = received },
        };

    private static Show Rig(int? sent, int? received) => Of(("desk", Limited(sent, received)), ("box", SmallProfiles.Box));

    [Fact]
    public void One_stream_too_many_sent_gives_one_finding() =>
        Expect.One(
            Rule,
            Rig(1, null).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8", "box/receive/5-8")),
            Severity.Error,
            "/rig/devices/0",
            "desk sends 2 streams but can send 1: s1 and s2.",
            "sender=desk",
            "stream=s1",
            "stream=s2"
        );

    [Fact]
    public void One_stream_too_many_received_gives_one_finding() =>
        Expect.One(
            Rule,
            Rig(null, 1).With(Stream("s1", "box/transmit/1-4", "desk/receive/1-4"), Stream("s2", "box/transmit/5-8", "desk/receive/5-8")),
            Severity.Error,
            "/rig/devices/0",
            "desk receives 2 streams but can receive 1: s1 and s2.",
            "receiver=desk",
            "stream=s1",
            "stream=s2"
        );

    [Fact]
    public void As_many_as_allowed_and_no_limit_at_all_give_none()
    {
        var streams = new[] { Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8", "box/receive/5-8") };

        Expect.None(Rule, Rig(2, 0).With(streams));
        Expect.None(Rule, Rig(null, null).With(streams));
    }

    [Fact]
    public void A_limit_of_none_is_a_limit() =>
        Expect.One(
            Rule,
            Rig(0, null).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")),
            Severity.Error,
            "/rig/devices/0",
            "desk sends 1 stream but can send 0: s1.",
            "sender=desk",
            "stream=s1"
        );

    [Fact]
    public void One_stream_to_many_receivers_and_to_two_blocks_of_one_device_counts_once()
    {
        var show = Of(("desk", Limited(1, 1)), ("a", Limited(1, 1) with { Id = new("test/limited") }), ("b", SmallProfiles.Box));

        Expect.None(Rule, show.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4", "a/receive/5-8", "b/receive/1-4")));
    }

    [Fact]
    public void A_block_that_two_streams_send_counts_once_at_the_sender() =>
        Expect.None(Rule, Rig(1, null).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/1-4", "box/receive/5-8")));

    [Fact]
    public void Both_directions_at_one_device_are_two_findings_with_different_identity()
    {
        var show = Rig(0, 0).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "box/transmit/1-4", "desk/receive/1-4"));

        Assert.Equal(2, Expect.Fingerprints(Rule, show).Distinct().Count());
    }

    [Fact]
    public void Streams_and_receivers_that_do_not_resolve_do_not_count() =>
        Expect.None(Rule, Rig(0, 0).With(Stream("s1", "desk/transmit/7-10", "box/receive/1-4"), Stream("s2", "box/transmit/1-4", "desk/receive/7-10")));

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
