using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class StreamWithoutReceiverTests
{
    private static readonly StreamWithoutReceiver Rule = new();

    private static Show DeskAndBox => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    [Fact]
    public void A_stream_that_nobody_receives_gives_one_finding() =>
        Expect.One(
            Rule,
            DeskAndBox.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8")),
            Severity.Warning,
            "/patch/streams/1",
            "Nobody receives stream 's2' from desk/transmit/5-8.",
            "stream=s2"
        );

    [Fact]
    public void A_stream_with_a_receiver_gives_none() => Expect.None(Rule, DeskAndBox.With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")));

    [Fact]
    public void A_stream_kept_on_purpose_gives_none() => Expect.None(Rule, DeskAndBox.With(Stream("s1", "desk/transmit/1-4") with { Keep = true }));

    [Fact]
    public void A_receiver_or_a_sender_that_does_not_resolve_is_left_to_its_own_rule()
    {
        Expect.None(Rule, DeskAndBox.With(Stream("s1", "desk/transmit/1-4", "gone/receive/1-4")));
        Expect.None(Rule, DeskAndBox.With(Stream("s1", "gone/transmit/1-4")));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void Taking_all_receivers_from_one_stream_of_a_clean_show_gives_one_finding(CleanShow clean)
    {
        Expect.None(Rule, clean.Show);
        var streams = clean.Show.Patch.Streams.ToArray();
        streams[^1] = streams[^1] with { To = [] };

        var finding = Assert.Single(RuleTester.Findings(Rule, clean.Show with { Patch = clean.Show.Patch with { Streams = streams.ToValueList() } }));

        Assert.Equal([Entity.Of("stream", streams[^1].Id)], finding.Entities);
    }
}
