using RoutingRules.Model;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Feeds;

/// <summary>A console in a chain with box a and behind it box b, or in a ring with both; feed one on box a, feed two on box b or also on a.</summary>
internal static class WaysRig
{
    public static Show Show(Func<Feed, Feed> second, string at = "b/out/2", bool isRing = false, string power = "right")
    {
        var show = Of(("desk", SmallProfiles.Console), ("a", SmallProfiles.Box), ("b", SmallProfiles.Box))
            .With(Stream("s", "desk/transmit/1-4", "a/receive/1-4", "b/receive/1-4"));
        return show with
        {
            Rig = show.Rig with
            {
                Devices =
                [
                    show.Rig.Devices[0] with
                    {
                        Power = [new("house")],
                    },
                    show.Rig.Devices[1] with
                    {
                        Power = [new("left")],
                    },
                    show.Rig.Devices[2] with
                    {
                        Power = [new(power)],
                    },
                ],
                Links = isRing
                    ? [Link("one", "desk/net/1", "a/net/1"), Link("two", "a/net/2", "b/net/1"), Link("three", "desk/net/2", "b/net/2")]
                    : [Link("one", "desk/net/1", "a/net/1"), Link("two", "a/net/2", "b/net/1")],
            },
            Feeds = [Feed("first", FeedRole.Monitor, "desk/aux/1", "a/out/1"), second(Feed("second", FeedRole.Monitor, "desk/aux/2", at))],
        };
    }

    private static Link Link(string id, string from, string to) =>
        new()
        {
            Id = new(id),
            Network = new("net"),
            From = At(from),
            To = At(to),
        };
}
