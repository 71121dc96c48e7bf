using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Verification;

public class LargeShowTests
{
    private const int Boxes = 64;

    [Fact]
    public void A_show_of_512_outputs_is_counted()
    {
        var console = SmallProfiles.Console with
        {
            Id = new("test/console-large"),
            PortGroups =
            [
                SmallProfiles.Group("aux", PortKind.Source, Boxes * 8),
                SmallProfiles.Group("transmit", PortKind.Transmit, Boxes * 8) with
                {
                    BlockSize = 8,
                },
                SmallProfiles.Network(2),
            ],
            Routing = [SmallProfiles.Entry("aux", "transmit", RoutingMode.Free)],
            FactoryRoutes = [],
            Limits = null,
        };
        var names = Enumerable.Range(1, Boxes).Select(number => $"box-{number}").ToList();
        var show = SmallShow.Of([("desk", console), .. names.Select(name => (name, SmallProfiles.Box))]);
        show = show with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("stage") }],
                Devices = show.Rig.Devices.Select(device => device with { Zone = new("stage") }).ToValueList(),
            },
            Feeds = Enumerable
                .Range(0, Boxes * 8)
                .Select(i => new Feed
                {
                    Id = new($"f{i + 1}"),
                    Role = FeedRole.Utility,
                    Source = SmallShow.At($"desk/aux/{i + 1}"),
                    To = [i % 2 == 0 ? new Destination { Devices = [new(names[i / 8])] } : new Destination { Zones = [new("stage")] }],
                })
                .ToValueList(),
        };
        var placements = Enumerable
            .Range(0, Boxes * 8)
            .Select(i => new Placement { Demand = $"f{i + 1}/1", At = SmallShow.At($"{names[i / 8]}/out/{(i % 8) + 1}") })
            .ToValueList();
        var result = show with
        {
            Patch = new Patch
            {
                Routes = [SmallShow.Route($"desk/aux/1-{Boxes * 8}", $"desk/transmit/1-{Boxes * 8}")],
                Streams = names
                    .Select(
                        (name, i) =>
                            new AudioStream
                            {
                                Id = new($"s{i + 1}"),
                                Network = new("net"),
                                From = SmallShow.At($"desk/transmit/{(i * 8) + 1}-{(i * 8) + 8}"),
                                To = [new() { At = SmallShow.At($"{name}/receive/1-8") }],
                            }
                    )
                    .ToValueList(),
            },
        };

        var verified = AssignmentVerifier.Verify(show, result, placements, [], new AssignmentOptions(), _ => null);
        var again = AssignmentVerifier.Verify(result, result, placements, [], new AssignmentOptions(), _ => null);

        // 64 blocks sent; two receive blocks of four on each box; each box's numbers add up to 36.
        Assert.Equal([], verified.Problems);
        Assert.Equal("0 0 0 0 | 0 0 | 0 0 0 0 0 64 128 2304", verified.Vector!.ToString());
        Assert.Equal(verified, again);
    }
}
