using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class StreamOffGridTests
{
    private static readonly StreamOffGrid Rule = new();

    private static Show DeskAndBox => Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box));

    [Fact]
    public void A_sender_between_two_blocks_gives_one_finding() =>
        Expect.One(
            Rule,
            DeskAndBox.With(Stream("s1", "desk/transmit/3-6", "box/receive/1-4")),
            Severity.Error,
            "/patch/streams/0/from",
            "Stream 's1' is sent from desk/transmit/3-6, which is not one whole block of 4: blocks start at 1, 5 and so on, and the last one ends at 8.",
            "stream=s1",
            "from=desk/transmit/3-6"
        );

    [Fact]
    public void A_receiver_between_two_blocks_gives_one_finding() =>
        Expect.One(
            Rule,
            DeskAndBox.With(Stream("s1", "desk/transmit/5-8", "box/receive/2-5")),
            Severity.Error,
            "/patch/streams/0/to/0/at",
            "Stream 's1' is received at box/receive/2-5, which is not whole blocks of 4: blocks start at 1, 5 and so on, and the last one ends at 8.",
            "stream=s1",
            "at=box/receive/2-5"
        );

    [Theory]
    [InlineData("desk/transmit/1-4", "box/receive/1-4")]
    [InlineData("desk/transmit/5-8", "box/receive/1-4")]
    [InlineData("desk/transmit/1-4", "box/receive/5-8")]
    public void Whole_blocks_give_none(string from, string to) => Expect.None(Rule, DeskAndBox.With(Stream("s1", from, to)));

    [Theory]
    [InlineData("desk/transmit/1-3")]
    [InlineData("desk/transmit/1-8")]
    [InlineData("desk/transmit/2")]
    public void A_sender_that_is_not_exactly_one_block_is_told_once_and_not_again_at_its_receivers(string from)
    {
        var width = At(from).Width;
        var show = DeskAndBox.With(Stream("s1", from, $"box/receive/1-{width}"));

        Assert.Equal(["/patch/streams/0/from"], RuleTester.Findings(Rule, show).Select(finding => finding.Pointer));
    }

    [Fact]
    public void Channels_start_at_a_block_of_the_receiver()
    {
        var wide = SmallProfiles.Console with
        {
            Id = new("test/wide"),
            PortGroups = SmallProfiles.Console.PortGroups.Select(group => group.Kind == PortKind.Transmit ? group with { BlockSize = 8 } : group).ToValueList(),
        };
        var show = Of(("desk", wide), ("box", SmallProfiles.Box));

        Expect.None(Rule, show.With(Taking("1-4", "box/receive/5-8")));
        Expect.None(Rule, show.With(Taking("5-8", "box/receive/1-4")));
        Expect.One(
            Rule,
            show.With(Taking("3-6", "box/receive/1-4")),
            Severity.Error,
            "/patch/streams/0/to/0/channels",
            "At box/receive/1-4 stream 's1' is taken from channel 3 on, but blocks of 4 start at channels 1, 5 and so on.",
            "stream=s1",
            "at=box/receive/1-4",
            "channels=3-6"
        );
        Expect.One(
            Rule,
            show.With(Taking("1-2", "box/receive/1-2")),
            Severity.Error,
            "/patch/streams/0/to/0/at",
            "Stream 's1' is received at box/receive/1-2, which is not whole blocks of 4: blocks start at 1, 5 and so on, and the last one ends at 8.",
            "stream=s1",
            "at=box/receive/1-2"
        );

        static AudioStream Taking(string channels, string at) =>
            Stream("s1", "desk/transmit/1-8") with
            {
                To = [new() { At = At(at), Channels = NumberRange.TryParse(channels, out var range, out _) ? range : null }],
            };
    }

    [Fact]
    public void Slots_beyond_the_last_whole_block_are_on_no_block()
    {
        var ragged = SmallProfiles.Box with
        {
            Id = new("test/ragged"),
            PortGroups = SmallProfiles.Box.PortGroups.Select(group => group.Kind == PortKind.Receive ? group with { Count = 10 } : group).ToValueList(),
        };
        var show = Of(("desk", SmallProfiles.Console), ("box", ragged)).With(Stream("s1", "desk/transmit/1-4", "box/receive/7-10"));

        Assert.Equal(["/patch/streams/0/to/0/at"], RuleTester.Findings(Rule, show).Select(finding => finding.Pointer));
    }

    [Fact]
    public void A_group_without_blocks_sends_slots_one_by_one()
    {
        var single = SmallProfiles.Console with
        {
            Id = new("test/single"),
            PortGroups = SmallProfiles
                .Console.PortGroups.Select(group => group.Kind is PortKind.Transmit or PortKind.Receive ? group with { BlockSize = null } : group)
                .ToValueList(),
        };
        var show = Of(("a", single), ("b", single));

        Expect.None(Rule, show.With(Stream("s1", "a/transmit/3", "b/receive/7")));
        Expect.One(
            Rule,
            show.With(Stream("s1", "a/transmit/3-4", "b/receive/7-8")),
            Severity.Error,
            "/patch/streams/0/from",
            "Stream 's1' is sent from a/transmit/3-4, which is not one whole block: its slots travel one by one.",
            "stream=s1",
            "from=a/transmit/3-4"
        );
    }

    [Theory]
    [InlineData("gone/transmit/3-6", "box/receive/1-4")]
    [InlineData("desk/transmit/7-10", "box/receive/1-4")]
    [InlineData("desk/aux/2-5", "box/receive/1-4")]
    [InlineData("desk/transmit/1-4", "box/receive/7-10")]
    [InlineData("desk/transmit/1-4", "box/receive/2-4")]
    public void What_does_not_resolve_is_left_to_its_own_rule(string from, string to) => Expect.None(Rule, DeskAndBox.With(Stream("s1", from, to)));

    [Fact]
    public void A_receiver_written_twice_is_told_once()
    {
        var show = DeskAndBox.With(Stream("s1", "desk/transmit/1-4", "box/receive/2-5", "box/receive/2-5", "box/receive/3-6"));

        Assert.Equal(["/patch/streams/0/to/0/at", "/patch/streams/0/to/2/at"], RuleTester.Findings(Rule, show).Select(finding => finding.Pointer));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);

    [Property]
    public void Of_all_runs_of_eight_slots_only_the_two_blocks_of_four_pass(byte first, byte width)
    {
        var start = (first % 8) + 1;
        var end = start + (width % (9 - start));
        var show = DeskAndBox.With(Stream("s1", $"desk/transmit/{start}-{end}") with { Keep = true });

        Assert.Equal((start, end) is (1, 4) or (5, 8) ? 0 : 1, RuleTester.Findings(Rule, show).Count);
    }
}
