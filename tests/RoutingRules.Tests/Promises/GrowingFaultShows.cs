using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules.Lines;
using RoutingRules.Tests.Checking.Rules.Networks;
using static RoutingRules.Testing.SmallShow;
using static RoutingRules.Tests.Checking.Rules.Networks.NetworkShow;

namespace RoutingRules.Tests.Promises;

/// <summary>Small shows that faults are planted in.</summary>
internal static class GrowingFaultShows
{
    public static IEnumerable<int> Numbers(int count) => Enumerable.Range(1, count);

    public static Line Microphone(int number) => Line($"l{number}", $"box/in/{number}", $"desk/channel/{number}").Needs(PhantomNeed.Required);

    /// <summary>A box whose outputs get what the console has at the slots of the same numbers; one feed wants the first bus at four of them.</summary>
    public static Show Sent(IEnumerable<int> served, int buses = 1) =>
        Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.Box))
            .With(Stream("s1", "desk/transmit/1-4", "box/receive/1-4"), Stream("s2", "desk/transmit/5-8", "box/receive/5-8"))
            .With([.. Enumerable.Range(1, 8).Select(n => Route(served.Contains(n) ? $"desk/aux/{(buses == 1 ? 1 : n)}" : null, $"desk/transmit/{n}"))]) with
        {
            Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", [.. Enumerable.Range(1, 4).Select(n => $"box/out/{n}")])],
        };

    /// <summary>A desk and three boxes in a chain.</summary>
    public static Show Linked(AudioStream[] streams, params Link[] links)
    {
        var profile = new DeviceProfile
        {
            Id = new("test/wide"),
            Kind = DeviceKind.Recorder,
            Name = "Wide",
            PortGroups =
            [
                SmallProfiles.Group("transmit", PortKind.Transmit, 64),
                SmallProfiles.Group("receive", PortKind.Receive, 64),
                SmallProfiles.Network(2),
            ],
        };
        return Of(("desk", profile), ("a", profile), ("b", profile), ("c", profile)).With(links).With(streams);
    }

    /// <summary>A box that is at once, and three that come 5 ms later.</summary>
    public static Show Late(Feed[] feeds) =>
        Numbers(3)
            .Aggregate(
                Of(
                    ("desk", SmallProfiles.Console),
                    ("box", SmallProfiles.Box),
                    ("b1", SmallProfiles.Box),
                    ("b2", SmallProfiles.Box),
                    ("b3", SmallProfiles.Box)
                ),
                (show, n) => show.WithProfile($"b{n}", profile => profile with { LatencyMilliseconds = [new() { Group = new("out"), Value = 5 }] })
            )
            .With(Stream("s", "desk/transmit/1-4", "box/receive/1-4", "b1/receive/1-4", "b2/receive/1-4", "b3/receive/1-4")) with
        {
            Feeds = feeds.ToValueList(),
        };
}
