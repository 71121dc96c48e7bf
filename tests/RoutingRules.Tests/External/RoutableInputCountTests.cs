using RoutingRules.Checking.Rules.Points;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.External;

/// <summary>How many maps the device of an IS-08 example allows, by trying them all.</summary>
/// <remarks>
/// Device: AMWA IS-08 v1.0.1, examples/io-get-200.json. The counts 76, 4 and 95 are derived from its rules by hand: output 1 takes input 1 as a block
/// (2 maps), input 4 in order (2), input 2 freely (36) and input 2 with input 4 (36), together 76; with unrouted channels allowed
/// 12 + 6 more with one channel empty and 1 with both, together 95; output 2 takes the two channels of input 3 freely (4).
/// </remarks>
public sealed class RoutableInputCountTests
{
    private static readonly string?[] Choices = [null, .. Points("input1", 4), .. Points("input2", 6), .. Points("input3", 2), .. Points("input4", 3)];

    internal static readonly DeviceProfile Device = new()
    {
        Id = new("test/io"),
        Kind = DeviceKind.Processor,
        Name = "Example device",
        PortGroups =
        [
            SmallProfiles.Group("input1", PortKind.Source, 4),
            SmallProfiles.Group("input2", PortKind.Source, 6),
            SmallProfiles.Group("input3", PortKind.Source, 2),
            SmallProfiles.Group("input4", PortKind.Source, 3),
            SmallProfiles.Group("output1", PortKind.Output, 2),
            SmallProfiles.Group("output2", PortKind.Output, 2),
        ],
        Routing =
        [
            SmallProfiles.Entry("input1", "output1", RoutingMode.Block) with
            {
                BlockSize = 2,
                Reordering = false,
            },
            SmallProfiles.Entry("input2", "output1", RoutingMode.Free),
            SmallProfiles.Entry("input4", "output1", RoutingMode.Block) with
            {
                BlockSize = 1,
                Reordering = false,
            },
            SmallProfiles.Entry("input3", "output2", RoutingMode.Free),
        ],
    };

    [Fact]
    public void Output_1_allows_76_maps_and_95_with_empty_channels()
    {
        var legal = Legal("output1");

        Assert.Equal(256, Choices.Length * Choices.Length);
        Assert.Equal(95, legal.Count);
        Assert.Equal(76, legal.Count(map => map.First is not null && map.Second is not null));
    }

    [Fact]
    public void Output_2_allows_4_maps_without_empty_channels() =>
        Assert.Equal(4, Legal("output2").Count(map => map.First is not null && map.Second is not null));

    private static List<(string? First, string? Second)> Legal(string output)
    {
        var legal = new List<(string? First, string? Second)>();
        foreach (var first in Choices)
        {
            foreach (var second in Choices)
            {
                var show = Of(("io", Device)).With(Route(first, $"io/{output}/1"), Route(second, $"io/{output}/2"));
                if (RuleTester.Findings(new RouteNotAllowed(), show).IsEmpty && RuleTester.Findings(new BlockRouteBroken(), show).IsEmpty)
                {
                    legal.Add((first, second));
                }
            }
        }

        return legal;
    }

    private static IEnumerable<string> Points(string group, int count) => Enumerable.Range(1, count).Select(number => $"io/{group}/{number}");
}
