using RoutingRules.Model;
using RoutingRules.Profiles;
using static RoutingRules.Testing.SmallProfiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>The rig of a tiny show.</summary>
internal sealed class TinyRig
{
    private readonly TinyDice dice;
    private readonly List<Device> devices = [];
    private readonly List<DeviceProfile> profiles = [];
    private readonly List<Cable> cables = [];
    private readonly int width;

    public TinyRig(TinyDice dice)
    {
        this.dice = dice;
        HasLines = dice.In(30);
        width = dice.Pick([2, 4, 4]);
        var consoles = dice.In(25) ? 2 : 1;
        for (var i = 0; i < consoles; i++)
            Consoles.Add(Add(i == 0 ? "desk" : "desk-b", MakeConsole(), "house"));

        var outputs = 0;
        var boxes = dice.From(1, 3);
        for (var i = 0; i < boxes && outputs < 8; i++)
        {
            var profile = MakeBox(Math.Min(4, 8 - outputs));
            outputs += profile.PortGroups[0].Count!.Value;
            Boxes.Add(Add($"box-{i + 1}", profile, dice.Pick(["left", "right"])));
        }

        if (dice.In(15))
            Recorder = Add("rec", MakeRecorder(), "house");

        if (dice.In(20))
            AddCabled();

        Rig = new Rig
        {
            Zones =
            [
                new() { Id = new("left"), Side = ZoneSide.HouseRight },
                new() { Id = new("right"), Side = ZoneSide.HouseLeft },
                new() { Id = new("house") },
            ],
            Networks =
            [
                new()
                {
                    Id = new("net"),
                    Transport = Transport.RtpL24,
                    PacketMicroseconds = 1000,
                },
            ],
            Profiles = profiles.ToValueList(),
            Devices = devices.ToValueList(),
            Cables = cables.ToValueList(),
            Links = dice.In(25) ? Links() : [],
            Unavailable = Marked().Select(at => new UnavailablePoints { At = at }).ToValueList(),
            Reserved = Marked().Select(at => new ReservedPoints { At = at }).ToValueList(),
        };
    }

    public Rig Rig { get; }

    /// <summary>Whether boxes have inputs and consoles channels.</summary>
    public bool HasLines { get; }

    public List<Device> Consoles { get; } = [];

    public List<Device> Boxes { get; } = [];

    /// <summary>Mentioned by no demand, unless a feed is pinned to it.</summary>
    public Device? Recorder { get; }

    /// <summary>An amplifier or transmitter rack behind a box; null when there is none.</summary>
    public Device? Cabled { get; private set; }

    public DeviceProfile Profile(Device device) => profiles.First(profile => profile.Id == device.Profile);

    public PortGroup? GroupOf(Device device, string id) => Profile(device).PortGroups.FirstOrDefault(group => group.Id.Value == id);

    public int Count(Device device, string group) => GroupOf(device, group)?.Count ?? 0;

    private Device Add(string id, DeviceProfile profile, string zone)
    {
        profile = profile with { Id = new($"tiny/{id}") };
        profiles.Add(profile);
        var device = new Device
        {
            Id = new(id),
            Profile = profile.Id,
            Zone = new(zone),
            Power = dice.In(50) ? [new(dice.Pick(["p1", "p2"]))] : [],
        };
        devices.Add(device);
        return device;
    }

    private DeviceProfile MakeConsole()
    {
        var blocks = width == 2 ? dice.From(2, 4) : dice.From(1, 2);
        var slots = (width * blocks) + (dice.In(10) ? 1 : 0);
        var outs = dice.In(35) ? dice.From(1, 2) : 0;
        var aux = Math.Min(5, slots);
        List<PortGroup> groups =
        [
            Group("aux", PortKind.Source, 5),
            Group("main", PortKind.Source, 2),
            Group("transmit", PortKind.Transmit, slots) with
            {
                BlockSize = width,
            },
            Network(4),
        ];
        List<RoutingEntry> routing = [Entry("aux", "transmit", RoutingMode.Free), Entry("main", "transmit", RoutingMode.Free)];
        List<FactoryRoute> factory = dice.In(40) ? [Factory("aux", 1, aux, "transmit", 1)] : [];
        if (outs > 0)
        {
            groups.Add(Group("out", PortKind.Output, outs) with { Level = SignalLevel.Line });
            routing.AddRange([Entry("aux", "out", RoutingMode.Free), Entry("main", "out", RoutingMode.Free)]);
            if (dice.In(50))
                factory.Add(Factory("main", 1, outs, "out", 1));
        }

        if (HasLines)
        {
            groups.AddRange([Group("channel", PortKind.Sink, 4), Group("receive", PortKind.Receive, 4) with { BlockSize = 2 }]);
            routing.Add(Entry("receive", "channel", RoutingMode.Free));
            if (dice.In(40))
                factory.Add(Factory("receive", 1, 4, "channel", 1));
        }

        return Make(DeviceKind.Console, groups, routing) with
        {
            FactoryRoutes = factory.ToValueList(),
            Limits = new() { StreamsSent = dice.In(25) ? Math.Max(1, blocks - 1) : null, StreamsReceived = dice.In(30) ? dice.From(1, 2) : null },
        };
    }

    private DeviceProfile MakeBox(int most)
    {
        var kind = dice.From(1, 4);
        var outs = dice.From(Math.Min(2, most), kind == 1 ? Math.Min(3, most) : most);
        var size =
            dice.In(4) ? 3
            : width == 4 && dice.In(50) ? 4
            : 2;
        var slots = ((outs + size - 1) / size * size) + (kind == 1 && outs <= 2 && dice.In(50) ? size : 0) - (dice.In(5) ? 1 : 0);
        var entry = Entry("receive", "out", kind == 1 ? RoutingMode.Free : RoutingMode.Fixed) with { Clearable = kind == 2 };
        List<PortGroup> groups =
        [
            Group("out", PortKind.Output, outs) with
            {
                Level = SignalLevel.Line,
            },
            Group("receive", PortKind.Receive, slots) with
            {
                BlockSize = size,
            },
            Network(4),
        ];
        List<RoutingEntry> routing = [entry];
        if (HasLines)
        {
            groups.AddRange([
                Group("in", PortKind.Input, dice.From(2, 3)) with
                {
                    Level = dice.In(70) ? SignalLevel.Mic : SignalLevel.Line,
                    Phantom = dice.In(60),
                },
                Group("transmit", PortKind.Transmit, 4) with
                {
                    BlockSize = 2,
                },
            ]);
            routing.Add(Entry("in", "transmit", dice.In(85) ? RoutingMode.Fixed : RoutingMode.Free));
        }

        return Make(DeviceKind.StageBox, groups, routing) with
        {
            Limits = new() { StreamsReceived = dice.In(25) ? dice.From(1, 2) : null, StreamsSent = dice.In(15) ? 1 : null },
        };
    }

    private static DeviceProfile MakeRecorder() =>
        Make(
            DeviceKind.Recorder,
            [Group("track", PortKind.Sink, 4), Group("receive", PortKind.Receive, 4) with { BlockSize = 2 }, Network(2)],
            [Entry("receive", "track", RoutingMode.Free)]
        );

    private void AddCabled()
    {
        var isRack = dice.In(40);
        Cabled = Add(
            isRack ? "rack" : "amp",
            Make(isRack ? DeviceKind.TransmitterRack : DeviceKind.Amplifier, [Group("in", PortKind.Input, 2) with { Level = SignalLevel.Line }], []),
            "left"
        );
        var box = dice.Pick(Boxes);
        var runs = Math.Min(2, Count(box, "out"));
        var first = dice.From(1, Count(box, "out") - runs + 1);
        cables.Add(new Cable { From = new(box.Id, new("out"), first, first + runs - 1), To = new(Cabled.Id, new("in"), 1, runs) });
    }

    // A star round the first console, with one box behind another now and then.
    private ValueList<Link> Links()
    {
        var links = new List<Link>();
        var others = devices.Where(device => device != Consoles[0] && device != Cabled).ToList();
        for (var i = 0; i < others.Count; i++)
        {
            var hub = i > 0 && dice.In(30) ? others[i - 1] : Consoles[0];
            links.Add(
                new Link
                {
                    Id = new($"link-{i + 1}"),
                    Network = new("net"),
                    From = new(hub.Id, new("net"), 1, 1),
                    To = new(others[i].Id, new("net"), 2, 2),
                }
            );
        }

        return links.ToValueList();
    }

    private List<PointRange> Marked() =>
        Boxes
            .SelectMany(box => Enumerable.Range(1, Count(box, "out")).Select(number => new PointRange(box.Id, new("out"), number, number)))
            .Where(_ => dice.In(6))
            .ToList();

    private static DeviceProfile Make(DeviceKind kind, List<PortGroup> groups, List<RoutingEntry> routing) =>
        new()
        {
            Id = new("tiny/any"),
            Kind = kind,
            Name = "Tiny device",
            PortGroups = groups.ToValueList(),
            Routing = routing.ToValueList(),
        };
}
