using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Assignment;

/// <summary>Shows too large to try everything, whose best is found by counting.</summary>
public sealed class ListOrderTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    /// <summary>Zones of four boxes, each with 8 outputs in fixed blocks of 4.</summary>
    private static Show Zones(int zones, int feedsPerZone, Func<int, Priority> priority)
    {
        var console = SmallProfiles.Console with
        {
            Id = new("test/console-wide"),
            PortGroups =
            [
                SmallProfiles.Group("aux", PortKind.Source, zones * feedsPerZone),
                SmallProfiles.Group("transmit", PortKind.Transmit, zones * 40) with
                {
                    BlockSize = 4,
                },
                SmallProfiles.Network(2),
            ],
            Routing = [SmallProfiles.Entry("aux", "transmit", RoutingMode.Free)],
            FactoryRoutes = [],
            Limits = null,
        };
        var show = SmallShow.Of([("desk", console), .. Enumerable.Range(0, zones * 4).Select(box => ($"box-{box + 1:000}", SmallProfiles.Box))]);
        return show with
        {
            Rig = show.Rig with
            {
                Zones = Enumerable.Range(0, zones).Select(zone => new Zone { Id = new($"zone-{zone + 1}") }).ToValueList(),
                Devices = show
                    .Rig.Devices.Index()
                    .Select(entry => entry.Index == 0 ? entry.Item : entry.Item with { Zone = new($"zone-{((entry.Index - 1) / 4) + 1}") })
                    .ToValueList(),
            },
            Feeds = Enumerable
                .Range(0, zones * feedsPerZone)
                .Select(i => new Feed
                {
                    Id = new($"f{i + 1}"),
                    Role = FeedRole.Utility,
                    Priority = priority(i),
                    Source = SmallShow.At($"desk/aux/{i + 1}"),
                    To = [new Destination { Zones = [new($"zone-{(i % zones) + 1}")] }],
                })
                .ToValueList(),
        };
    }

    [Fact]
    public void Three_blocks_of_four_for_twelve_feeds_in_each_of_eight_zones_are_proven_best()
    {
        var result = Engine.Assign(Zones(8, 12, _ => Priority.Normal), new AssignmentOptions());

        // A box block carries 4 feeds and no two blocks carry the same: 3 transmit and 3 receive blocks a zone, 24 in all.
        // Numbers 1-4 on three boxes: 3 x 10 a zone, 240 in all; fewer boxes would need numbers above 4.
        Assert.Equal("0 0 0 0 | 0 0 | 0 0 0 0 0 24 24 240", result.Objective!.ToString());
        Assert.Equal((AssignmentStatus.Optimal, ObjectiveVector.Length), (result.Status, result.ProvenNumbers));
    }

    [Fact]
    public void Of_too_many_feeds_the_least_important_stay_without_a_place_and_that_is_proven()
    {
        // 35 feeds for the 32 outputs of one zone: 3 must go, all of them normal, of which there are 30.
        var result = Engine.Assign(
            Zones(
                1,
                35,
                i =>
                    i < 2 ? Priority.Critical
                    : i < 5 ? Priority.High
                    : Priority.Normal
            ),
            new AssignmentOptions()
        );

        Assert.Equal([0, 0, 3, 0], result.Objective!.Values.Take(4));
        Assert.True(result.ProvenNumbers >= 4, $"{result.ProvenNumbers} numbers are proven.");
        Assert.Equal(AssignmentStatus.Feasible, result.Status);
    }
}
