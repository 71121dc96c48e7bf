using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class TransmitBlockSentTwiceTests
{
    private static readonly TransmitBlockSentTwice Rule = new();

    private static Show Rig => Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box));

    [Fact]
    public void One_block_in_two_streams_gives_one_finding() =>
        Expect.One(
            Rule,
            Rig.With(Stream("to-b", "desk/transmit/1-4", "b/receive/1-4"), Stream("to-a", "desk/transmit/1-4", "a/receive/1-4")),
            Severity.Error,
            "/patch/streams/1/from",
            "Streams 'to-b' and 'to-a' send the same slots, desk/transmit/1-4.",
            "slots=desk/transmit/1-4",
            "stream=to-a",
            "stream=to-b"
        );

    [Fact]
    public void Blocks_side_by_side_and_equal_numbers_on_two_devices_give_none()
    {
        Expect.None(Rule, Rig.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"), Stream("s2", "desk/transmit/5-8", "b/receive/1-4")));
        Expect.None(Rule, Rig.With(Stream("s1", "a/transmit/5-8", "desk/receive/1-4"), Stream("s2", "b/transmit/1-4", "desk/receive/5-8")));
    }

    [Fact]
    public void Streams_that_overlap_in_part_give_one_finding() =>
        Expect.One(
            Rule,
            Rig.With(Stream("s1", "desk/transmit/1-4", "a/receive/1-4"), Stream("s2", "desk/transmit/4-7", "b/receive/1-4")),
            Severity.Error,
            "/patch/streams/1/from",
            "Streams 's1' (desk/transmit/1-4) and 's2' (desk/transmit/4-7) send some slots more than once.",
            "slots=desk/transmit/1-7",
            "stream=s1",
            "stream=s2"
        );

    [Fact]
    public void Slots_that_several_streams_send_alike_are_named_once() =>
        Assert.Equal(
            "Streams 's1' and 's3' (desk/transmit/1-4) and 's2' (desk/transmit/4-7) send some slots more than once.",
            Assert
                .Single(
                    RuleTester.Findings(
                        Rule,
                        Rig.With(
                            Stream("s1", "desk/transmit/1-4", "a/receive/1-4"),
                            Stream("s2", "desk/transmit/4-7", "b/receive/1-4"),
                            Stream("s3", "desk/transmit/1-4", "b/receive/5-8")
                        )
                    )
                )
                .Message
        );

    [Fact]
    public void Three_streams_of_one_block_give_one_finding()
    {
        var show = Rig.With(
            Stream("s3", "desk/transmit/1-4", "a/receive/1-4"),
            Stream("s1", "desk/transmit/1-4", "b/receive/1-4"),
            Stream("s2", "desk/transmit/1-4", "b/receive/5-8")
        );

        var finding = Assert.Single(RuleTester.Findings(Rule, show));

        Assert.Equal("/patch/streams/1/from", finding.Pointer);
        Assert.Equal(["desk/transmit/1-4", "s1", "s2", "s3"], finding.Entities.Select(entity => entity.Id));
    }

    [Fact]
    public void A_sender_that_does_not_resolve_is_left_to_its_own_rule() =>
        Expect.None(Rule, Rig.With(Stream("s1", "desk/aux/1-4", "a/receive/1-4"), Stream("s2", "desk/aux/1-4", "b/receive/1-4")));

    [Fact]
    public void The_order_of_streams_does_not_change_the_identity()
    {
        var a = Stream("s1", "desk/transmit/1-4", "a/receive/1-4");
        var b = Stream("s2", "desk/transmit/1-4", "b/receive/1-4");

        Assert.Equal(Expect.Fingerprints(Rule, Rig.With(a, b)), Expect.Fingerprints(Rule, Rig.With(b with { Label = "Second" }, a)));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none_and_a_doubled_stream_gives_one(CleanShow clean)
    {
        Expect.None(Rule, clean.Show);
        var streams = clean.Show.Patch.Streams;

        Assert.Single(
            RuleTester.Findings(
                Rule,
                clean.Show with
                {
                    Patch = clean.Show.Patch with { Streams = streams.Append(streams[0] with { Id = new("again"), To = [] }).ToValueList() },
                }
            )
        );
    }
}
