using System.Globalization;
using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Benchmarks;

/// <summary>Shows to assign, of five shapes and of sizes from 16 to 1,024 outputs, the same ones in every run.</summary>
public sealed class AssignInstances
{
    /// <summary>The seed of every shape at every size; changing one makes old results worthless.</summary>
    private static readonly (AssignShape Shape, int[] Seeds)[] Frozen =
    [
        (AssignShape.Boxes, [1101, 1102, 1103, 1104, 1105, 1106, 1107]),
        (AssignShape.Chain, [1201, 1202, 1203, 1204, 1205, 1206, 1207]),
        (AssignShape.TwoConsoles, [1301, 1302, 1303, 1304, 1305, 1306, 1307]),
        (AssignShape.Tight, [1401, 1402, 1403, 1404, 1405, 1406, 1407]),
        (AssignShape.Festival, [1501, 1502, 1503, 1504, 1505, 1506, 1507]),
    ];

    private static readonly int[] Sizes = [16, 32, 64, 128, 256, 512, 1_024];

    private readonly AssignShape shape;
    private readonly int outputs;
    private readonly Random lot;
    private readonly List<DeviceProfile> profiles = [];
    private readonly List<Device> boxes = [];
    private readonly List<Link> links = [];
    private readonly List<Feed> feeds = [];
    private readonly List<Line> lines = [];
    private readonly AssignProfiles made;
    private int channels;

    private AssignInstances(AssignShape shape, int outputs, int seed)
    {
        this.shape = shape;
        this.outputs = outputs;
        lot = new Random(seed);
        made = new AssignProfiles(shape, outputs, BoxSize);
    }

    private int BoxSize => shape is AssignShape.Boxes or AssignShape.TwoConsoles ? 8 : 16;

    private int Consoles => shape == AssignShape.TwoConsoles ? 2 : 1;

    /// <summary>All instances, by shape, then size.</summary>
    public static IEnumerable<AssignInstance> All()
    {
        foreach (var (shape, seeds) in Frozen)
        {
            for (var i = 0; i < Sizes.Length; i++)
            {
                yield return Create(shape, Sizes[i], seeds[i]);
            }
        }
    }

    /// <summary>One instance.</summary>
    /// <param name="shape">What it looks like.</param>
    /// <param name="outputs">Outputs of all boxes, 16 or more.</param>
    /// <param name="seed">Any number.</param>
    public static AssignInstance Create(AssignShape shape, int outputs, int seed) =>
        new(shape, outputs, seed, new AssignInstances(shape, outputs, seed).Build(), new AssignmentOptions { Spares = shape == AssignShape.Tight ? 1 : 0 });

    private Show Build()
    {
        AddBoxes();
        AddFeeds();
        if (shape == AssignShape.Festival)
        {
            AddLines();
        }

        var consoles = new List<Device>();
        for (var console = 0; console < Consoles; console++)
        {
            profiles.Add(made.Console(Desk(console), Consoles, channels, boxes.Count));
            consoles.Add(
                new Device
                {
                    Id = new(Desk(console)),
                    Profile = new("made/" + Desk(console)),
                    Zone = new Id<Zone>("house"),
                }
            );
        }

        return new Show
        {
            Title = Invariant($"Made-up {shape}, {outputs} outputs"),
            Rig = new Rig
            {
                Zones = [new Zone { Id = new("house") }, new Zone { Id = new("left") }, new Zone { Id = new("right") }],
                Networks =
                [
                    new Network
                    {
                        Id = new("net"),
                        Transport = Transport.RtpL24,
                        PacketMicroseconds = 1000,
                    },
                ],
                Profiles = profiles.ToValueList(),
                Devices = consoles.Concat(boxes).ToValueList(),
                Links = links.ToValueList(),
            },
            Feeds = feeds.ToValueList(),
            Lines = lines.ToValueList(),
        };
    }

    private void AddBoxes()
    {
        for (var box = 0; box * BoxSize < outputs; box++)
        {
            // Half of mixed boxes are fixed, as most boxes of a crew are.
            var routing = shape switch
            {
                AssignShape.Chain => 0,
                AssignShape.Tight => 1 + (box % 2),
                _ => Math.Max(0, lot.Next(4) - 1),
            };
            var id = Invariant($"box-{box + 1}");
            profiles.Add(made.Box(id, routing));
            boxes.Add(
                new Device
                {
                    Id = new(id),
                    Profile = new("made/" + id),
                    Zone = new Id<Zone>(box % 2 == 0 ? "left" : "right"),
                }
            );
            if (shape == AssignShape.Chain)
            {
                links.Add(
                    new Link
                    {
                        Id = new(Invariant($"link-{box + 1}")),
                        Network = new("net"),
                        From = PointRange.Parse(box == 0 ? "desk-1/net/1" : Invariant($"box-{box}/net/2")),
                        To = PointRange.Parse(id + "/net/1"),
                        SpeedMbps = 10_000,
                    }
                );
            }
        }
    }

    private void AddFeeds()
    {
        var free = boxes.ConvertAll(_ => BoxSize - (shape == AssignShape.Tight ? 1 : 0));
        var wanted = outputs * (shape == AssignShape.Tight ? 88 : 80) / 100;
        var next = new int[Consoles];
        for (var taken = 0; taken < wanted; )
        {
            var width = lot.Next(100) < (shape == AssignShape.Tight ? 70 : 25) ? 2 : 1;
            var console = lot.Next(Consoles);
            if (width == 2 && next[console] % 2 == 1)
            {
                next[console]++;
            }

            var to = new List<Destination>();
            var entries = shape == AssignShape.Festival ? 1 + (lot.Next(8) == 0 ? 1 : 0) : 1 + lot.Next(lot.Next(3) == 0 ? 4 : 1);
            for (var entry = 0; entry < entries && taken < wanted; entry++)
            {
                var box = PickBox(free, width);
                free[box] -= width;
                taken += width;
                to.Add(
                    lot.Next(3) == 0
                        ? new Destination { Zones = [boxes[box].Zone!.Value] }
                        : new Destination { Devices = lot.Next(3) == 0 ? [boxes[box].Id, boxes[lot.Next(boxes.Count)].Id] : [boxes[box].Id] }
                );
            }

            var first = next[console] + 1;
            next[console] += width;
            feeds.Add(
                Decorate(
                    new Feed
                    {
                        Id = new(Invariant($"feed-{feeds.Count + 1}")),
                        Source = PointRange.Parse(
                            width == 1 ? Invariant($"{Desk(console)}/bus/{first}") : Invariant($"{Desk(console)}/bus/{first}-{first + 1}")
                        ),
                        To = [.. to.Select(destination => destination with { Devices = [.. destination.Devices.Distinct()] })],
                        Role = FeedRole.Utility,
                    }
                )
            );
        }
    }

    private Feed Decorate(Feed feed)
    {
        feed = feed with
        {
            Priority = lot.Next(6) switch
            {
                0 => Priority.High,
                1 => Priority.Low,
                _ => Priority.Normal,
            },
        };
        if (shape != AssignShape.Festival)
        {
            return feed;
        }

        var draw = lot.Next(10);
        return draw switch
        {
            < 2 => feed with { Set = Invariant($"set-{feeds.Count / 4}"), Part = Invariant($"part-{feeds.Count % 4}") },
            < 4 => feed with { Group = Invariant($"group-{feeds.Count / 6}") },
            < 6 => feed with { Preferred = 1 + lot.Next(BoxSize) },
            _ => feed,
        };
    }

    /// <summary>A box with room for a width, looked for from a place drawn by lot.</summary>
    private int PickBox(List<int> free, int width)
    {
        var start = lot.Next(boxes.Count);
        for (var i = 0; i < boxes.Count; i++)
        {
            if (free[(start + i) % boxes.Count] >= width)
            {
                return (start + i) % boxes.Count;
            }
        }

        return start;
    }

    private void AddLines()
    {
        for (var box = 0; box < boxes.Count; box++)
        {
            for (var line = 0; line < 12; line++)
            {
                channels++;
                lines.Add(
                    new Line
                    {
                        Id = new(Invariant($"line-{channels}")),
                        Kind = LineKind.Microphone,
                        From = new LineOrigin { Devices = [boxes[box].Id] },
                        To = [PointRange.Parse(Invariant($"desk-1/channel/{channels}"))],
                        Preferred = lot.Next(4) == 0 ? 1 + lot.Next(16) : null,
                    }
                );
            }
        }
    }

    private static string Desk(int console) => Invariant($"desk-{console + 1}");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
