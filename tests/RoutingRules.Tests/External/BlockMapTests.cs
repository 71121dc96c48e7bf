using RoutingRules.Checking.Rules.Points;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.External;

/// <summary>The worked channel maps of AMWA IS-08 against the block rule.</summary>
/// <remarks>
/// Maps W1 to W7: AMWA IS-08 v1.0.1, docs/Behaviour.md, figures docs/images/map-examples/input-constraints-*.png; verdicts follow from its rules on
/// Re-ordering and Channel Block Sizes and agree with the text around the figures. Maps X1 to X4 are derived from the same rules by hand,
/// because the figures do not tell the two constraints apart. Positions there count from 0, points here from 1.
/// </remarks>
public sealed class BlockMapTests
{
    public static TheoryData<string, string, bool, bool, bool, bool> Maps =>
        new()
        {
            // Name, map "output: in>out", then valid for (1, reordering), (1, no), (8, reordering), (8, no).
            { "W1 no-reordering", "a:0-7>0-7 b:8-15>0-7", true, true, true, true },
            { "W2 gaps", "a:0-2>0-2 a:3-6>4-7 b:8-12>0-4 b:14-16>5-7", true, false, false, false },
            { "W3 switching", "a:0-3>0-3 a:4-4>5-5 a:5-5>4-4 a:6-6>6-6 b:16-16>0-0 b:9-15>1-7", true, false, false, false },
            { "W4 input-gap", "a:0-6>0-6 b:9-16>0-7", true, true, false, false },
            { "W5 crossover", "a:0-7>0-7 b:5-12>0-7", true, true, false, false },
            { "W6 block-crossover", "a:8-15>0-7 b:0-7>0-7", true, true, true, true },
            { "W7 one-block", "a:0-7>0-7", true, true, true, true },
            { "X1 order inside a whole block", "a:0-3>0-3 a:4-4>5-5 a:5-5>4-4 a:6-6>6-6 a:7-7>7-7", true, false, true, false },
            { "X2 off the grid", "a:4-11>0-7", true, true, false, false },
            { "X3 two blocks change places inside one output", "c:8-15>0-7 c:0-7>8-15", true, false, true, false },
            { "X4 one channel twice", "a:0-0>0-0 a:0-0>1-1", true, false, false, false },
        };

    [Theory]
    [MemberData(nameof(Maps))]
    public void Each_map_is_valid_exactly_where_the_standard_says_so(string name, string map, bool freeAny, bool freeKept, bool blockAny, bool blockKept)
    {
        Assert.NotEmpty(name);
        Assert.Equal([freeAny, freeKept, blockAny, blockKept], [IsValid(map, 1, true), IsValid(map, 1, false), IsValid(map, 8, true), IsValid(map, 8, false)]);
    }

    [Fact]
    public void The_figure_with_a_block_to_two_outputs_is_valid_without_blocks_only()
    {
        // docs/Overview.md, figure terminology: input A 0-7 to output A, and its 6 and 7 to output B as well.
        const string map = "a:0-7>0-7 b:6-7>6-7";

        Assert.True(IsValid(map, 1, true));
        Assert.True(IsValid(map, 1, false));
        Assert.False(IsValid(map, 8, true));
    }

    private static bool IsValid(string map, int blockSize, bool reordering)
    {
        var routes = map.Split(' ')
            .Select(part =>
            {
                var sides = part[2..].Split('>').Select(side => side.Split('-').Select(int.Parse).ToArray()).ToArray();
                return Route($"card/input/{sides[0][0] + 1}-{sides[0][1] + 1}", $"card/{part[0]}/{sides[1][0] + 1}-{sides[1][1] + 1}");
            });
        var show = Of(("card", Card(blockSize, reordering))).With([.. routes]);

        Assert.Empty(RuleTester.Findings(new RouteNotAllowed(), show));
        return RuleTester.Findings(new BlockRouteBroken(), show).IsEmpty;
    }

    internal static DeviceProfile Card(int blockSize, bool reordering)
    {
        RoutingEntry Entry(string to) => SmallProfiles.Entry("input", to, RoutingMode.Block) with { BlockSize = blockSize, Reordering = reordering };
        return new()
        {
            Id = new("test/card"),
            Kind = DeviceKind.Processor,
            Name = "Card of 64 channels",
            PortGroups =
            [
                SmallProfiles.Group("input", PortKind.Source, 64),
                SmallProfiles.Group("a", PortKind.Output, 8),
                SmallProfiles.Group("b", PortKind.Output, 8),
                SmallProfiles.Group("c", PortKind.Output, 16),
            ],
            Routing = [Entry("a"), Entry("b"), Entry("c")],
        };
    }
}
