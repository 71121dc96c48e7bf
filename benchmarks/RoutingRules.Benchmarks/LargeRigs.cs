using System.Globalization;
using RoutingRules.Model;

namespace RoutingRules.Benchmarks;

/// <summary>Made-up rigs of a wanted size, patched: cells of a console and two stage boxes, eight cells to a network with a switch in its middle.</summary>
/// <remarks>What goes where is drawn by lot from a fixed seed, so that every run sees the same rigs.</remarks>
public sealed class LargeRigs
{
    private const int CellsOnNetwork = 8;
    private const int PointsOfCell = 310;
    private const int FeedsOfBox = 8;
    private const int InputsOfBox = 20;

    private readonly Random lot = new(20270612);
    private readonly List<Zone> zones = [];
    private readonly List<Clock> clocks = [];
    private readonly List<Network> networks = [];
    private readonly List<Device> devices = [];
    private readonly List<Link> links = [];
    private readonly List<Feed> feeds = [];
    private readonly List<Line> lines = [];
    private readonly List<AudioStream> streams = [];
    private readonly List<Route> routes = [];
    private readonly List<InputSettings> inputs = [];
    private readonly List<PointLabel> labels = [];

    private LargeRigs() { }

    /// <summary>A show with about so many points.</summary>
    public static Show Create(int points)
    {
        var rigs = new LargeRigs();
        for (var cell = 0; cell == 0 || cell * PointsOfCell < points; cell++)
        {
            rigs.AddCell(cell);
        }

        return rigs.Build();
    }

    private Show Build() =>
        new()
        {
            Title = "Made-up rig",
            Rig = new Rig
            {
                Zones = zones.ToValueList(),
                Clocks = clocks.ToValueList(),
                Networks = networks.ToValueList(),
                Devices = devices.ToValueList(),
                Links = links.ToValueList(),
            },
            Feeds = feeds.ToValueList(),
            Lines = lines.ToValueList(),
            Patch = new Patch
            {
                Streams = streams.ToValueList(),
                Routes = routes.ToValueList(),
                Inputs = inputs.ToValueList(),
                Labels = labels.ToValueList(),
            },
        };

    private void AddCell(int cell)
    {
        var network = Name("net", cell / CellsOnNetwork);
        var desk = Name("desk", cell);
        if (cell % CellsOnNetwork == 0)
        {
            clocks.Add(
                new Clock
                {
                    Id = new(Name("clock", networks.Count)),
                    SampleRate = 48000,
                    Leader = new(desk),
                    Backup = new Id<Device>(Box(cell, 0)),
                }
            );
            devices.Add(
                new Device
                {
                    Id = new(Name("switch", networks.Count)),
                    Profile = new("generic/network-switch-10"),
                    Power = [new(Name("ups", networks.Count))],
                }
            );
            networks.Add(
                new Network
                {
                    Id = new(network),
                    Transport = Transport.RtpL24,
                    PacketMicroseconds = 1000,
                    Clock = new Id<Clock>(Name("clock", networks.Count)),
                }
            );
        }

        devices.Add(
            new Device
            {
                Id = new(desk),
                Profile = new("generic/console-medium"),
                Power = [new(Name("ups", cell))],
            }
        );
        Join(network, $"{Name("switch", cell / CellsOnNetwork)}/net/{(cell % CellsOnNetwork) + 1}", $"{desk}/net/1");
        Join(network, $"{desk}/net/2", $"{Box(cell, 0)}/net/1");
        Join(network, $"{Box(cell, 0)}/net/2", $"{Box(cell, 1)}/net/1");
        var channels = Shuffled(2 * InputsOfBox);
        var slots = Shuffled(2 * FeedsOfBox);
        for (var box = 0; box < 2; box++)
        {
            var zone = Box(cell, box) + "-zone";
            zones.Add(
                new Zone
                {
                    Id = new(zone),
                    Side = box == 0 ? ZoneSide.HouseLeft : ZoneSide.HouseRight,
                    Walk = (2 * cell) + box + 1,
                }
            );
            devices.Add(
                new Device
                {
                    Id = new(Box(cell, box)),
                    Profile = new("generic/stage-box-medium"),
                    Zone = new Id<Zone>(zone),
                    Power = [new(Name("distro", cell))],
                }
            );
            AddFeeds(cell, box, network, slots);
            AddLines(cell, box, network, channels);
        }
    }

    private void AddFeeds(int cell, int box, string network, int[] slots)
    {
        var desk = Name("desk", cell);
        var first = (FeedsOfBox * box) + 1;
        streams.Add(
            new AudioStream
            {
                Id = new(Box(cell, box) + "-sends"),
                Network = new(network),
                From = Run(desk, "transmit", first, FeedsOfBox),
                To = [new StreamReceiver { At = Run(Box(cell, box), "receive", 1, FeedsOfBox) }],
            }
        );
        for (var i = 0; i < FeedsOfBox; i++)
        {
            var bus = slots[first - 1 + i] + 1;
            var id = $"{Box(cell, box)}-mix-{i + 1}";
            var isInEar = lot.Next(3) == 0;
            var output = Run(Box(cell, box), "out", i + 1, 1);
            feeds.Add(
                new Feed
                {
                    Id = new(id),
                    Name = id,
                    Role = isInEar ? FeedRole.InEar : FeedRole.Monitor,
                    Limiter = isInEar ? true : null,
                    Person = isInEar ? id : null,
                    Source = Run(desk, "aux", bus, 1),
                    To =
                    [
                        lot.Next(3) switch
                        {
                            0 => new Destination { At = output },
                            1 => new Destination { Devices = [new(Box(cell, box))] },
                            _ => new Destination { Zones = [new(Box(cell, box) + "-zone")] },
                        },
                    ],
                }
            );
            routes.Add(new Route { From = Run(desk, "aux", bus, 1), To = Run(desk, "transmit", first + i, 1) });
            labels.Add(new PointLabel { At = output, Text = $"{cell + 1} {box} MIX {i + 1}" });
        }
    }

    private void AddLines(int cell, int box, string network, int[] channels)
    {
        var desk = Name("desk", cell);
        for (var i = 0; i < InputsOfBox; i++)
        {
            var slot = (InputsOfBox * box) + i;
            if (i % 4 == 0)
            {
                streams.Add(
                    new AudioStream
                    {
                        Id = new($"{Box(cell, box)}-returns-{(i / 4) + 1}"),
                        Network = new(network),
                        From = Run(Box(cell, box), "transmit", i + 1, 4),
                        To = [new StreamReceiver { At = Run(desk, "receive", slot + 1, 4) }],
                    }
                );
            }

            var needsPhantom = lot.Next(2) == 0;
            var channel = Run(desk, "channel", channels[slot] + 1, 1);
            var input = Run(Box(cell, box), "in", i + 1, 1);
            var id = $"{Box(cell, box)}-line-{i + 1}";
            lines.Add(
                new Line
                {
                    Id = new(id),
                    Name = id,
                    Kind = LineKind.Microphone,
                    Phantom = needsPhantom ? PhantomNeed.Required : PhantomNeed.Either,
                    From = lot.Next(2) == 0 ? new LineOrigin { At = [input] } : new LineOrigin { Devices = [new(Box(cell, box))] },
                    To = [channel],
                }
            );
            routes.Add(new Route { From = Run(desk, "receive", slot + 1, 1), To = channel });
            inputs.Add(
                new InputSettings
                {
                    At = input,
                    Phantom = needsPhantom,
                    GainOwner = new Id<Device>(desk),
                }
            );
            labels.Add(new PointLabel { At = channel, Text = $"{cell + 1} {box} L {i + 1}" });
        }
    }

    private void Join(string network, string from, string to) =>
        links.Add(
            new Link
            {
                Id = new(Name("link", links.Count)),
                Network = new(network),
                From = PointRange.Parse(from),
                To = PointRange.Parse(to),
                Medium = Medium.CopperSolid,
                LengthMetres = 40,
                SpeedMbps = 1000,
            }
        );

    private int[] Shuffled(int count)
    {
        var order = Enumerable.Range(0, count).ToArray();
        lot.Shuffle(order);
        return order;
    }

    private static string Box(int cell, int box) => string.Create(CultureInfo.InvariantCulture, $"box-{cell + 1}-{box + 1}");

    private static string Name(string kind, int index) => string.Create(CultureInfo.InvariantCulture, $"{kind}-{index + 1}");

    private static PointRange Run(string device, string group, int first, int width) => new(new(device), new(group), first, first + width - 1);
}
