using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Assignment;

/// <summary>Blocks that two boxes may share, which the search in list order counts in parts.</summary>
public sealed class SharedBlocksTests
{
    private static readonly DeviceProfile Console = new()
    {
        Id = new("test/console-of-twos"),
        Kind = DeviceKind.Console,
        Name = "Test console",
        PortGroups =
        [
            SmallProfiles.Group("aux", PortKind.Source, 2),
            SmallProfiles.Group("transmit", PortKind.Transmit, 8) with
            {
                BlockSize = 2,
            },
            SmallProfiles.Network(2),
        ],
        Routing = [SmallProfiles.Entry("aux", "transmit", RoutingMode.Free)],
    };

    private static readonly DeviceProfile Box = new()
    {
        Id = new("test/box-of-two"),
        Kind = DeviceKind.StageBox,
        Name = "Test box",
        PortGroups =
        [
            SmallProfiles.Group("out", PortKind.Output, 2) with
            {
                Level = SignalLevel.Line,
            },
            SmallProfiles.Group("receive", PortKind.Receive, 2) with
            {
                BlockSize = 2,
            },
            SmallProfiles.Network(2),
        ],
        Routing = [SmallProfiles.Entry("receive", "out", RoutingMode.Fixed)],
    };

    // Bus 1 goes to box a and to box b, bus 2 to box a or to box c. Idle outputs must be silent.
    // Beside bus 1 at a: a takes bus 1 and 2, b takes bus 1 alone: two transmit blocks, two receive blocks, numbers 1 + 1 + 2.
    // At c: a and b share a block with bus 1, c takes bus 2: two transmit blocks as well, three receive blocks, numbers 1 + 1 + 1.
    // One transmit block is too few, as the one bus must not sound where the other is alone.
    // Counted in parts the first costs one and a half and the second two, so that the first is the best by parts; it is not by blocks and numbers.
    [Theory]
    [InlineData(false, "0 0 0 0 | 0 0 | 0 0 0 0 0 2 2 4", "a/out/2")]
    [InlineData(true, "0 0 0 0 | 0 0 | 0 0 0 0 0 2 3 3", "c/out/1")]
    public void Of_equally_many_blocks_the_smaller_numbers_win_where_they_come_first(bool areNumbersFirst, string objective, string at)
    {
        var show = SmallShow.Of(("desk", Console), ("a", Box), ("b", Box), ("c", Box)) with
        {
            Feeds =
            [
                SmallShow.FeedTo("one", FeedRole.Monitor, "desk/aux/1", "a", "b"),
                SmallShow.FeedTo("two", FeedRole.Monitor, "desk/aux/2", "a") with
                {
                    To = [new() { Devices = [new("a"), new("c")] }],
                },
            ],
        };
        ValueList<ObjectiveLevel> numbersFirst =
        [
            ObjectiveLevel.Order,
            ObjectiveLevel.TransmitBlocks,
            ObjectiveLevel.Numbers,
            ObjectiveLevel.Sets,
            ObjectiveLevel.Groups,
            ObjectiveLevel.Distance,
            ObjectiveLevel.Rewritten,
            ObjectiveLevel.ReceiveBlocks,
        ];

        var result = RoutingEngine.CreateBuilder().Build().Assign(show, new() { Order = areNumbersFirst ? numbersFirst : default });

        Assert.Equal(["one/1 a/out/1", "one/2 b/out/1", $"two/1 {at}"], result.Placements.Select(place => $"{place.Demand} {place.At}"));
        Assert.Equal(objective, result.Objective!.ToString());
        Assert.Equal((AssignmentStatus.Optimal, ObjectiveVector.Length), (result.Status, result.ProvenNumbers));
    }
}
