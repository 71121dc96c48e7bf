using FsCheck;
using FsCheck.Fluent;
using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>Generates messy shows: routes, streams, feeds and lines at random, right, wrong and unresolved ones side by side.</summary>
public static class MessyShows
{
    private static readonly string[] Boxes = ["a", "b", "gone"];

    public static Arbitrary<MessyShow> Shows()
    {
        var generator =
            from routes in Short(Route(), 8)
            from streams in Short(Stream(), 4)
            from feeds in Short(Feed(), 6)
            from lines in Short(Line(), 3)
            select new MessyShow { Show = Make(routes, streams, feeds, lines) };
        return generator.ToArbitrary();
    }

    private static Gen<T[]> Short<T>(Gen<T> item, int most) => from count in Gen.Choose(0, most) from items in item.ArrayOf(count) select items;

    private static Gen<Route> Route() =>
        from bus in Gen.Choose(0, 9)
        from slot in Gen.Choose(1, 9)
        select SmallShow.Route(bus == 0 ? null : $"desk/aux/{bus}", $"desk/transmit/{slot}");

    private static Gen<AudioStream> Stream() =>
        from start in Gen.Elements(1, 5, 3)
        from width in Gen.Elements(4, 4, 4, 2)
        from receivers in Short(Receiver(width), 2)
        select SmallShow.Stream("s", $"desk/transmit/{start}-{start + width - 1}", receivers);

    private static Gen<string> Receiver(int width) =>
        from box in Gen.Elements(Boxes)
        from start in Gen.Elements(1, 5, 2)
        select $"{box}/receive/{start}-{start + width - 1}";

    private static Gen<Feed> Feed() =>
        from bus in Gen.Choose(1, 8)
        from width in Gen.Elements(1, 1, 2)
        from part in Gen.Elements("left", "right", null)
        from to in Short(Place(width), 3)
        select SmallShow.Feed("f", FeedRole.Main, $"desk/aux/{bus}-{bus + width - 1}") with
        {
            Set = part is null ? null : "set",
            Part = part,
            To = to.ToValueList(),
        };

    private static Gen<Destination> Place(int width) =>
        from box in Gen.Elements(Boxes)
        from first in Gen.Choose(0, 8)
        select first == 0 ? new Destination { Devices = [new(box)] } : new Destination { At = At($"{box}/out/{first}-{first + width - 1}") };

    private static Gen<Line> Line() =>
        from first in Gen.Choose(1, 7)
        from sink in Gen.Choose(1, 7)
        select SmallShow.Line("l", $"a/in/{first}-{first + 1}", $"desk/channel/{sink}-{sink + 1}");

    private static Show Make(Route[] routes, AudioStream[] streams, Feed[] feeds, Line[] lines)
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.ClearableBox));
        return show with
        {
            Rig = show.Rig with
            {
                Zones = [new() { Id = new("sr"), Side = ZoneSide.HouseLeft }, new() { Id = new("sl"), Side = ZoneSide.HouseRight }],
                Devices = [show.Rig.Devices[0], show.Rig.Devices[1] with { Zone = new("sr") }, show.Rig.Devices[2] with { Zone = new("sl") }],
            },
            Feeds = feeds.Select((feed, index) => feed with { Id = new($"feed-{index}") }).ToValueList(),
            Lines = lines.Select((line, index) => line with { Id = new($"line-{index}") }).ToValueList(),
            Patch = new()
            {
                Routes = routes.ToValueList(),
                Streams = streams
                    .Select((stream, index) => stream with { Id = new($"stream-{index}") })
                    .Append(SmallShow.Stream("back", "a/transmit/1-4", "desk/receive/1-4"))
                    .ToValueList(),
            },
        };
    }
}
