using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class ReceiveBlocksOverlapTests
{
    private static readonly ReceiveBlocksOverlap Rule = new();

    private static Show Rig => Of(("desk", SmallProfiles.Console), ("guest", SmallProfiles.Console), ("box", SmallProfiles.Box));

    [Fact]
    public void Two_streams_at_one_block_give_one_finding() =>
        Expect.One(
            Rule,
            Rig.With(Stream("b", "desk/transmit/1-4", "box/receive/1-4"), Stream("a", "guest/transmit/1-4", "box/receive/5-8", "box/receive/1-4")),
            Severity.Error,
            "/patch/streams/1/to/1",
            "Streams 'b' and 'a' both claim box/receive/1-4; 'b' counts and 'a' is not heard there.",
            "slots=box/receive/1-4",
            "stream=a",
            "stream=b"
        );

    [Fact]
    public void Streams_at_blocks_side_by_side_give_none() =>
        Expect.None(Rule, Rig.With(Stream("a", "desk/transmit/1-4", "box/receive/1-4"), Stream("b", "guest/transmit/1-4", "box/receive/5-8")));

    [Fact]
    public void A_partial_overlap_names_the_shared_slots() =>
        Expect.One(
            Rule,
            Rig.With(Stream("a", "desk/transmit/1-4", "box/receive/1-4"), Stream("b", "guest/transmit/1-4", "box/receive/4-7")),
            Severity.Error,
            "/patch/streams/1/to/0",
            "Streams 'a' and 'b' both claim box/receive/4; 'a' counts and 'b' is not heard there.",
            "slots=box/receive/4",
            "stream=a",
            "stream=b"
        );

    [Fact]
    public void Two_receivers_of_one_stream_give_one_finding_however_often_written() =>
        Expect.One(
            Rule,
            Rig.With(Stream("a", "desk/transmit/1-4", "box/receive/1-4", "box/receive/1-4", "box/receive/1-4")),
            Severity.Error,
            "/patch/streams/0/to/1",
            "Two receivers of stream 'a' claim box/receive/1-4; the first one counts.",
            "slots=box/receive/1-4",
            "stream=a",
            "stream=a"
        );

    [Fact]
    public void Three_streams_at_one_block_give_a_finding_for_each_that_is_not_heard()
    {
        var show = Rig.With(
            Stream("a", "desk/transmit/1-4", "box/receive/1-4"),
            Stream("b", "desk/transmit/5-8", "box/receive/1-4"),
            Stream("c", "guest/transmit/1-4", "box/receive/1-4")
        );

        Assert.Equal(2, Expect.Fingerprints(Rule, show).Distinct().Count());
    }

    [Fact]
    public void Two_routes_at_one_slot_are_left_to_the_rule_on_points() =>
        Expect.None(Rule, Rig.With(Route("desk/aux/1", "desk/transmit/1"), Route("desk/aux/2", "desk/transmit/1")));

    [Fact]
    public void The_order_of_the_two_streams_does_not_change_the_identity()
    {
        var a = Stream("a", "desk/transmit/1-4", "box/receive/1-4");
        var b = Stream("b", "guest/transmit/1-4", "box/receive/1-4");

        Assert.Equal(Expect.Fingerprints(Rule, Rig.With(a, b)), Expect.Fingerprints(Rule, Rig.With(b with { Label = "B" }, a)));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none_and_one_more_receiver_on_a_used_block_gives_one(CleanShow clean)
    {
        Expect.None(Rule, clean.Show);
        var used = clean.Show.Patch.Streams[0].To[0].At;
        var streams = clean.Show.Patch.Streams.Append(Stream("extra", "box-3/transmit/1-4", used.ToString())).ToValueList();

        var finding = Assert.Single(RuleTester.Findings(Rule, clean.Show with { Patch = clean.Show.Patch with { Streams = streams } }));

        Assert.Equal(Entity.Of("slots", used), finding.Entities[0]);
    }
}
