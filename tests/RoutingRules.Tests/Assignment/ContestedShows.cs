using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>Two consoles and boxes that take one stream each, so that either console serves a box or the other; the same show for the same seed.</summary>
internal static class ContestedShows
{
    /// <summary>A show with single outputs wanted on one box or two.</summary>
    /// <param name="seed">Any number.</param>
    /// <param name="boxes">Number of boxes.</param>
    /// <param name="size">Outputs of a box and slots of a stream.</param>
    /// <param name="feeds">Number of feeds.</param>
    /// <param name="second">How often a feed may stand on a second box, in percent.</param>
    public static TinyInstance Make(int seed, int boxes, int size, int feeds, int second)
    {
        var dice = new TinyDice(seed);
        var next = new int[2];
        return new TinyInstance
        {
            Seed = seed,
            Options = new AssignmentOptions(),
            Show = new Show
            {
                Title = $"Contested {seed}",
                Rig = new Rig
                {
                    Zones = [new() { Id = new("house") }, new() { Id = new("stage") }],
                    Networks =
                    [
                        new()
                        {
                            Id = new("net"),
                            Transport = Transport.RtpL24,
                            PacketMicroseconds = 1000,
                        },
                    ],
                    Profiles = [Console(boxes, size, feeds), Box("fixed", size, isFree: false), Box("free", size, isFree: true)],
                    Devices =
                    [
                        .. new[] { "desk-a", "desk-b" }.Select(id => new Device
                        {
                            Id = new(id),
                            Profile = new("made/console"),
                            Zone = new Id<Zone>("house"),
                        }),
                        .. Enumerable
                            .Range(1, boxes)
                            .Select(box => new Device
                            {
                                Id = new($"box-{box}"),
                                Profile = new(dice.In(50) ? "made/free" : "made/fixed"),
                                Zone = new Id<Zone>("stage"),
                            }),
                    ],
                },
                Feeds = Enumerable.Range(1, feeds).Select(number => Feed(dice, next, number, boxes, second)).ToValueList(),
            },
        };
    }

    private static Feed Feed(TinyDice dice, int[] next, int number, int boxes, int second)
    {
        var console = dice.From(0, 1);
        var box = dice.From(1, boxes);
        var other = dice.In(second) ? dice.From(1, boxes) : box;
        return new Feed
        {
            Id = new($"feed-{number}"),
            Source = PointRange.Parse($"desk-{(console == 0 ? "a" : "b")}/bus/{++next[console]}"),
            Role = FeedRole.Utility,
            Priority = dice.Pick([Priority.Critical, Priority.High, Priority.Normal, Priority.Normal, Priority.Low]),
            To = [new Destination { Devices = box == other ? [new($"box-{box}")] : [new($"box-{box}"), new($"box-{other}")] }],
        };
    }

    private static DeviceProfile Console(int boxes, int size, int feeds) =>
        new()
        {
            Id = new("made/console"),
            Kind = DeviceKind.Console,
            Name = "console",
            PortGroups =
            [
                new()
                {
                    Id = new("bus"),
                    Kind = PortKind.Source,
                    Count = feeds,
                },
                new()
                {
                    Id = new("transmit"),
                    Kind = PortKind.Transmit,
                    Count = boxes * size,
                    BlockSize = size,
                },
                new()
                {
                    Id = new("net"),
                    Kind = PortKind.Network,
                    Count = 1,
                },
            ],
            Routing =
            [
                new()
                {
                    From = new("bus"),
                    To = new("transmit"),
                    Mode = RoutingMode.Free,
                },
            ],
            SampleRates = [48_000],
        };

    private static DeviceProfile Box(string id, int size, bool isFree) =>
        new()
        {
            Id = new("made/" + id),
            Kind = DeviceKind.StageBox,
            Name = id,
            PortGroups =
            [
                new()
                {
                    Id = new("out"),
                    Kind = PortKind.Output,
                    Count = size,
                    Level = SignalLevel.Line,
                },
                new()
                {
                    Id = new("receive"),
                    Kind = PortKind.Receive,
                    Count = size,
                    BlockSize = size,
                },
                new()
                {
                    Id = new("net"),
                    Kind = PortKind.Network,
                    Count = 1,
                },
            ],
            Routing =
            [
                new()
                {
                    From = new("receive"),
                    To = new("out"),
                    Mode = isFree ? RoutingMode.Free : RoutingMode.Fixed,
                },
            ],
            SampleRates = [48_000],
        };
}
