using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using static RoutingRules.Testing.SmallProfiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>One console that sends, one or two boxes that take, made by construction.</summary>
internal sealed class PointedShow
{
    private readonly int seed;
    private readonly TinyDice dice;
    private readonly DeviceProfile console;
    private readonly List<DeviceProfile> boxes = [];
    private readonly List<Feed> feeds = [];
    private readonly List<AudioStream> streams = [];
    private readonly List<Route> routes = [];

    public PointedShow(int seed, int kind, RoutingMode atBox, RoutingMode atConsole)
    {
        this.seed = seed;
        dice = new TinyDice(seed + (kind * 100_000_000));
        var width = dice.Pick([2, 4]);
        var blocks = width == 2 ? dice.From(1, 3) : dice.From(1, 2);
        console = Profile(
            "desk",
            DeviceKind.Console,
            [Group("aux", PortKind.Source, dice.From(3, 5)), Group("transmit", PortKind.Transmit, width * blocks) with { BlockSize = width }],
            Routing("aux", "transmit", atConsole)
        ) with
        {
            Limits = new() { StreamsSent = dice.In(15) ? 1 : null },
        };
        var count = dice.From(1, 2);
        for (var i = 0; i < count; i++)
        {
            var outs = dice.From(2, count == 1 ? 4 : 3);
            var size =
                width == 4 && dice.In(40) ? 4
                : dice.In(20) ? 1
                : 2;
            var slots = size == 4 ? 4 : (outs + 1) / 2 * 2 + (dice.In(50) ? 2 : 0);
            var mode =
                atBox == RoutingMode.Block && dice.In(20) ? RoutingMode.Free
                : atBox == RoutingMode.Fixed && dice.In(30) ? RoutingMode.Free
                : atBox;
            boxes.Add(
                Profile(
                    i == 0 ? "y" : "z",
                    DeviceKind.StageBox,
                    [
                        Group("out", PortKind.Output, outs) with
                        {
                            Level = SignalLevel.Line,
                        },
                        Group("receive", PortKind.Receive, slots) with
                        {
                            BlockSize = size,
                        },
                    ],
                    Routing("receive", "out", mode)
                ) with
                {
                    Limits = new() { StreamsReceived = dice.In(30) ? 1 : null },
                }
            );
        }
    }

    /// <summary>Adds feeds, each from an aux of its own or now and then from one that another has.</summary>
    public void AddFeeds(int least, int most, int pairs, int pins)
    {
        var wanted = dice.From(least, most);
        for (var i = 0; i < wanted; i++)
        {
            var width = dice.In(pairs) ? 2 : 1;
            var aux = dice.In(15) ? 1 : dice.From(1, Count(console, "aux") - width + 1);
            var box = dice.Pick(boxes);
            var last = Math.Max(1, Count(box, "out") - width + 1);
            var first = width == 2 && dice.In(85) ? 1 + (2 * dice.From(0, (last - 1) / 2)) : dice.From(1, last);
            feeds.Add(
                new Feed
                {
                    Id = new($"feed-{i + 1}"),
                    Role = dice.Pick([FeedRole.Monitor, FeedRole.Monitor, FeedRole.Main]),
                    Source = new PointRange(new("desk"), new("aux"), aux, aux + width - 1),
                    To =
                    [
                        dice.In(pins)
                            ? new Destination { At = new PointRange(IdOf(box), new("out"), first, Math.Min(first + width - 1, Count(box, "out"))) }
                            : new Destination { Devices = Devices() },
                    ],
                    Priority = dice.Pick([Priority.Normal, Priority.Normal, Priority.High, Priority.Low]),
                    Preferred = dice.In(10) ? dice.From(1, 3) : null,
                    Hold = dice.In(15) ? dice.In(50) : null,
                }
            );
        }
    }

    /// <summary>Adds a patch in so many of a hundred cases: blocks that listen, slots filled at random, and most feeds served somewhere.</summary>
    public void AddPatch(int percent)
    {
        if (!dice.In(percent))
            return;

        Fill("desk", console, "aux", "transmit", 85);
        var size = console.PortGroups[1].BlockSize!.Value;
        var receivers = Enumerable.Range(0, Count(console, "transmit") / size).Select(_ => new List<StreamReceiver>()).ToList();
        foreach (var box in boxes)
        {
            var width = box.PortGroups[1].BlockSize!.Value;
            for (var first = 1; first + width - 1 <= Count(box, "receive"); first += width)
            {
                if (!dice.In(85))
                    continue;

                var part = dice.From(0, (size / width) - 1) * width;
                dice.Pick(receivers)
                    .Add(
                        new StreamReceiver
                        {
                            At = new PointRange(IdOf(box), new("receive"), first, first + width - 1),
                            Channels = new NumberRange(part + 1, part + width),
                        }
                    );
            }

            Fill(IdOf(box).Value, box, "receive", "out", 80);
        }

        for (var block = 0; block < receivers.Count; block++)
        {
            if (receivers[block].Count > 0)
                streams.Add(
                    new AudioStream
                    {
                        Id = new($"s{block + 1}"),
                        Network = new("net"),
                        From = new PointRange(new("desk"), new("transmit"), (block * size) + 1, (block + 1) * size),
                        To = receivers[block].ToValueList(),
                        Keep = dice.In(4),
                    }
                );
        }
    }

    /// <summary>The show.</summary>
    public TinyInstance Make() =>
        new()
        {
            Seed = seed,
            Show = new Show
            {
                Title = $"Pointed {seed}",
                Rig = new Rig
                {
                    Networks =
                    [
                        new()
                        {
                            Id = new("net"),
                            Transport = Transport.RtpL24,
                            PacketMicroseconds = 1000,
                        },
                    ],
                    Profiles = [console, .. boxes],
                    Devices = [new Device { Id = new("desk"), Profile = console.Id }, .. boxes.Select(box => new Device { Id = IdOf(box), Profile = box.Id })],
                },
                Feeds = feeds.ToValueList(),
                Patch = new Patch { Streams = streams.ToValueList(), Routes = routes.ToValueList() },
            },
            Options = new AssignmentOptions { KeepUnlisted = dice.In(8), Spares = dice.In(4) ? 1 : 0 },
        };

    private RoutingEntry Routing(string from, string to, RoutingMode mode) =>
        Entry(from, to, mode) with
        {
            BlockSize = mode == RoutingMode.Block ? 2 : null,
            Reordering = mode == RoutingMode.Block && dice.In(50),
            Clearable = mode == RoutingMode.Fixed && dice.In(30),
        };

    private ValueList<Id<Device>> Devices() => dice.In(60) ? [.. boxes.Select(IdOf)] : [IdOf(dice.Pick(boxes))];

    // Routes that the profile allows: whole blocks of sinks at one offset or, where blocks may be reordered, each at its own.
    private void Fill(string device, DeviceProfile profile, string from, string to, int percent)
    {
        var entry = profile.Routing[0];
        if (entry.Mode == RoutingMode.Fixed)
            return;

        var (sources, sinks) = (Count(profile, from), Count(profile, to));
        var size = entry.BlockSize ?? 1;
        var offset = dice.From(-1, 1);
        for (var first = 1; first <= sinks; first += size)
        {
            if (!dice.In(percent))
                continue;

            var block = entry.Mode == RoutingMode.Block && !entry.Reordering ? ((first - 1) / size) + offset : dice.From(0, ((sources + size - 1) / size) - 1);
            var width = Math.Min(Math.Min(size, sinks - first + 1), sources - (block * size));
            if (block >= 0 && width > 0)
                routes.Add(
                    new Route
                    {
                        From = new PointRange(new(device), new(from), (block * size) + 1, (block * size) + width),
                        To = new PointRange(new(device), new(to), first, first + width - 1),
                    }
                );
        }
    }

    private static Id<Device> IdOf(DeviceProfile box) => new(box.Id.Value["tiny/".Length..]);

    private static int Count(DeviceProfile profile, string group) => profile.PortGroups.First(entry => entry.Id.Value == group).Count!.Value;

    private static DeviceProfile Profile(string id, DeviceKind kind, ValueList<PortGroup> groups, RoutingEntry entry) =>
        new()
        {
            Id = new($"tiny/{id}"),
            Kind = kind,
            Name = "Tiny device",
            PortGroups = [.. groups, Network(2)],
            Routing = [entry],
        };
}
