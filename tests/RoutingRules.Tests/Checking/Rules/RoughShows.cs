using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>
/// Generates shows that are readable but full of faults: missing devices and groups, numbers too high, wrong kinds, unequal widths, doubled sinks, loops.
/// </summary>
public static class RoughShows
{
    private static readonly DeviceProfile Relay = SmallProfiles.FreeBox with
    {
        Id = new("test/relay"),
        Routing = [SmallProfiles.Entry("receive", "transmit", RoutingMode.Free), SmallProfiles.Entry("in", "out", RoutingMode.Block) with { BlockSize = 4 }],
    };

    private static readonly string[] Groups = ["aux", "main", "channel", "in", "out", "transmit", "receive", "net", "auxx"];

    public static Arbitrary<Show> Shows()
    {
        var range =
            from device in Gen.Frequency((6, Gen.Elements("desk", "box", "free", "mid", "amp")), (1, Gen.Elements("odd", "gone")))
            from @group in Gen.Elements(Groups)
            from first in Gen.Frequency((8, Gen.Choose(1, 8)), (1, Gen.Choose(9, 12)))
            from width in Gen.Frequency((3, Gen.Constant(1)), (1, Gen.Choose(1, 4)))
            select At($"{device}/{@group}/{first}-{first + width - 1}");
        var route = Gen.Frequency(
            (1, from to in range select new Route { To = to }),
            (4, from source in range from to in range select new Route { From = source, To = to }),
            (4, from aux in Gen.Choose(1, 8) from slot in Gen.Choose(1, 8) select Route($"desk/aux/{aux}", $"desk/transmit/{slot}")),
            (3, from slot in Gen.Choose(1, 8) from channel in Gen.Choose(1, 8) select Route($"desk/receive/{slot}", $"desk/channel/{channel}")),
            (3, from slot in Gen.Choose(1, 8) from output in Gen.Choose(1, 8) select Route($"free/receive/{slot}", $"free/out/{output}")),
            (3, from slot in Gen.Choose(1, 8) from other in Gen.Choose(1, 8) select Route($"mid/receive/{slot}", $"mid/transmit/{other}")),
            (2, from input in Gen.Choose(1, 8) from output in Gen.Choose(1, 8) select Route($"mid/in/{input}", $"mid/out/{output}")),
            (
                2,
                from @group in Gen.Elements("in", "receive")
                from input in Gen.Choose(1, 8)
                from output in Gen.Choose(1, 8)
                select Route($"box/{@group}/{input}", $"box/out/{output}")
            ),
            (2, from output in Gen.Choose(1, 2) select Route(null, $"desk/out/{output}"))
        );
        var stream = Gen.Frequency(
            (
                1,
                from source in range
                from to in range
                select new AudioStream
                {
                    Id = new("s"),
                    Network = new("net"),
                    From = source,
                    To = [new() { At = to }],
                }
            ),
            (
                3,
                from sender in Gen.Elements("desk", "box", "free", "mid")
                from receiver in Gen.Elements("desk", "box", "free", "mid")
                from blocks in Gen.Elements("1-4", "5-8")
                from at in Gen.Elements("1-4", "5-8")
                select Stream("s", $"{sender}/transmit/{blocks}", $"{receiver}/receive/{at}")
            )
        );
        var cable = Gen.Frequency(
            (1, from source in range from to in range select new Cable { From = source, To = to }),
            (
                3,
                from box in Gen.Elements("box", "free", "desk")
                from output in Gen.Choose(1, 8)
                from input in Gen.Choose(1, 4)
                select Cable($"{box}/out/{output}", $"amp/in/{input}")
            ),
            (1, from output in Gen.Choose(1, 4) from input in Gen.Choose(1, 8) select Cable($"amp/out/{output}", $"mid/in/{input}"))
        );
        var feed =
            from source in Gen.Frequency((1, range), (4, from aux in Gen.Choose(1, 8) select At($"desk/aux/{aux}")))
            from at in Gen.Frequency((1, range), (3, from output in Gen.Choose(1, 8) select At($"box/out/{output}")))
            select new Feed
            {
                Id = new("f"),
                Role = FeedRole.Monitor,
                Source = source,
                To = [new() { At = at }],
            };
        var line =
            from at in range
            from to in range
            select new Line
            {
                Id = new("l"),
                Kind = LineKind.Microphone,
                From = new() { At = [at] },
                To = [to],
            };
        var label = from at in range select new PointLabel { At = at, Text = "X" };
        var shows =
            from routes in route.ArrayOf()
            from streams in stream.ArrayOf()
            from cables in cable.ArrayOf()
            from feeds in feed.ArrayOf()
            from lines in line.ArrayOf()
            from labels in label.ArrayOf()
            select Make(routes, streams, cables, feeds, lines, labels);
        return shows.Resize(12).ToArbitrary();
    }

    private static Show Make(Route[] routes, AudioStream[] streams, Cable[] cables, Feed[] feeds, Line[] lines, PointLabel[] labels)
    {
        var show = Of(
            ("desk", SmallProfiles.Console),
            ("box", SmallProfiles.Box),
            ("free", SmallProfiles.FreeBox),
            ("mid", Relay),
            ("amp", SmallProfiles.Amplifier)
        );
        return show with
        {
            Rig = show.Rig with { Devices = [.. show.Rig.Devices, new() { Id = new("odd"), Profile = new("test/nowhere") }], Cables = cables.ToValueList() },
            Feeds = feeds.Select((feed, index) => feed with { Id = new($"f{index}") }).ToValueList(),
            Lines = lines.Select((line, index) => line with { Id = new($"l{index}") }).ToValueList(),
            Patch = new()
            {
                Routes = routes.ToValueList(),
                Streams = streams.Select((stream, index) => stream with { Id = new($"s{index}") }).ToValueList(),
                Labels = labels.ToValueList(),
            },
        };
    }
}
