using System.Globalization;
using RoutingRules.Documents;
using RoutingRules.Model;

namespace RoutingRules.Benchmarks;

/// <summary>Made-up shows of a wanted size.</summary>
public static class SampleShows
{
    /// <summary>A show of about 20 KB as crews write it: most entries on one line.</summary>
    public static byte[] TwentyKilobytes() => Grow(20_480);

    /// <summary>A show that has just reached a length in bytes.</summary>
    public static byte[] Grow(int length)
    {
        for (var size = 4; ; size += Math.Max(1, size / 50))
        {
            var bytes = ShowWriter.ToUtf8(Create(size));
            if (bytes.Length >= length)
            {
                return bytes;
            }
        }
    }

    /// <summary>A show with so many feeds, half as many lines, and the rig and patch that go with them.</summary>
    public static Show Create(int feeds) =>
        new()
        {
            Title = "Tidewater Folk, Saturday",
            Venue = "Old Ferry Yard",
            Date = new DateOnly(2027, 6, 12),
            Revision = "C",
            Rig = new Rig
            {
                Zones =
                [
                    new Zone
                    {
                        Id = new("stage-right"),
                        Side = ZoneSide.HouseLeft,
                        Walk = 1,
                    },
                    new Zone
                    {
                        Id = new("stage-left"),
                        Side = ZoneSide.HouseRight,
                        Walk = 2,
                        Near = [new("stage-right")],
                    },
                ],
                Clocks =
                [
                    new Clock
                    {
                        Id = new("c1"),
                        SampleRate = 48000,
                        Leader = new("desk"),
                        Backup = new Id<Device>("box-1"),
                    },
                ],
                Networks =
                [
                    new Network
                    {
                        Id = new("audio"),
                        Transport = Transport.RtpL24,
                        PacketMicroseconds = 1000,
                        Clock = new Id<Clock>("c1"),
                    },
                ],
                Devices = Range(1 + (feeds / 4), Device),
                Links = Range(
                    feeds / 4,
                    i => new Link
                    {
                        Id = new($"link-{i + 1}"),
                        Network = new("audio"),
                        From = PointRange.Parse("desk/net/1"),
                        To = PointRange.Parse($"box-{i + 1}/net/1"),
                        Medium = Medium.CopperSolid,
                        LengthMetres = 70.5,
                        SpeedMbps = 1000,
                    }
                ),
            },
            Feeds = Range(feeds, Feed),
            Lines = Range(feeds / 2, Line),
            Patch = new Patch
            {
                Streams = Range(
                    feeds / 4,
                    i => new AudioStream
                    {
                        Id = new($"s{i + 1}"),
                        Network = new("audio"),
                        From = new PointRange(new("desk"), new("transmit"), (8 * i) + 1, (8 * i) + 8),
                        To = [new StreamReceiver { At = PointRange.Parse($"box-{i + 1}/receive/1-8") }],
                    }
                ),
                Routes = Range(feeds, i => new Route { From = Bus(i), To = new PointRange(new("desk"), new("transmit"), i + 1, i + 1) }),
                Labels = Range(feeds / 2, i => new PointLabel { At = Channel(i), Text = string.Create(CultureInfo.InvariantCulture, $"LINE {i + 1}") }),
            },
        };

    private static Device Device(int i) =>
        i == 0
            ? new Device
            {
                Id = new("desk"),
                Profile = new("generic/console-medium"),
                Power = [new("ups-1")],
            }
            : new Device
            {
                Id = new($"box-{i}"),
                Profile = new("generic/stage-box-medium"),
                Zone = new Id<Zone>(i % 2 == 0 ? "stage-left" : "stage-right"),
                Label = $"Box {i}",
                Power = [new("sr-distro")],
            };

    private static Feed Feed(int i) =>
        new()
        {
            Id = new($"mix-{i + 1}"),
            Name = $"Mix {i + 1}",
            Role = i % 3 == 0 ? FeedRole.InEar : FeedRole.Monitor,
            Source = Bus(i),
            To =
                i % 2 == 0
                    ? [new Destination { Zones = [new("stage-right")] }]
                    :
                    [
                        new Destination { Devices = [new($"box-{(i / 4) + 1}")] },
                        new Destination { At = PointRange.Parse($"box-{(i / 4) + 1}/out/{(i % 4) + 1}") },
                    ],
            Priority = i % 8 == 0 ? Priority.Critical : Priority.Normal,
            Limiter = i % 3 == 0 ? true : null,
            Person = $"player {i + 1}",
        };

    private static Line Line(int i) =>
        new()
        {
            Id = new($"line-{i + 1}"),
            Name = $"Line {i + 1}",
            Kind = LineKind.Microphone,
            Phantom = i % 2 == 0 ? PhantomNeed.Required : PhantomNeed.Either,
            From = new LineOrigin { Zones = [new("stage-left")] },
            To = [Channel(i)],
            Equipment = "clip mic",
            Group = "strings",
        };

    private static PointRange Bus(int i) => new(new("desk"), new("aux"), i + 1, i + 1);

    private static PointRange Channel(int i) => new(new("desk"), new("channel"), i + 1, i + 1);

    private static ValueList<T> Range<T>(int count, Func<int, T> make) => Enumerable.Range(0, count).Select(make).ToValueList();
}
