using FsCheck.Xunit;
using RoutingRules.Checking.Rules.Streams;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Streams;

public sealed class ReceiverWidthMismatchTests
{
    private static readonly ReceiverWidthMismatch Rule = new();

    private static Show Rig(int receiveBlock)
    {
        var box = SmallProfiles.Box with
        {
            Id = new("test/other-blocks"),
            PortGroups = SmallProfiles
                .Box.PortGroups.Select(group => group.Kind == PortKind.Receive ? group with { BlockSize = receiveBlock } : group)
                .ToValueList(),
        };
        return Of(("desk", SmallProfiles.Console), ("box", box));
    }

    [Theory]
    [InlineData(8)]
    [InlineData(3)]
    public void Blocks_that_do_not_divide_the_stream_give_one_finding(int block) =>
        Expect.One(
            Rule,
            Rig(block).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")),
            Severity.Error,
            "/patch/streams/0/to/0",
            $"Stream 's1' has 4 channels, but box/receive takes blocks of {block}: it cannot be received whole at box/receive/1-4.",
            "stream=s1",
            "receiver=box/receive"
        );

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    public void Blocks_that_divide_the_stream_give_none(int block) => Expect.None(Rule, Rig(block).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")));

    [Fact]
    public void Two_receivers_on_one_group_give_one_finding()
    {
        var show = Rig(8).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4", "box/receive/5-8"));

        Assert.Equal(["/patch/streams/0/to/0"], RuleTester.Findings(Rule, show).Select(finding => finding.Pointer));
    }

    [Fact]
    public void A_receiver_that_cannot_fit_is_not_told_as_off_the_grid_too() =>
        Expect.None(new StreamOffGrid(), Rig(8).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4")));

    [Fact]
    public void A_sender_off_its_grid_and_unequal_ends_are_left_to_their_own_rules()
    {
        Expect.None(Rule, Rig(4).With(Stream("s1", "desk/transmit/1-3", "box/receive/1-3")));
        Expect.None(Rule, Rig(8).With(Stream("s1", "desk/transmit/1-4", "box/receive/1-8")));
    }

    [Property(Arbitrary = [typeof(CleanShows)])]
    public void A_clean_show_gives_none(CleanShow clean) => Expect.None(Rule, clean.Show);
}
