using RoutingRules.Documents.Tables;
using RoutingRules.Model;

namespace RoutingRules.Documents.Formats;

/// <summary>Tables of the rig.</summary>
internal static class RigTables
{
    private static readonly ObjectTable<Zone> Zone = CreateZone();
    private static readonly ObjectTable<Device> Device = CreateDevice();
    internal static readonly ObjectTable<UnavailablePoints> Unavailable = CreateUnavailable();
    internal static readonly ObjectTable<ReservedPoints> Reserved = CreateReserved();

    public static ObjectTable<Network> Network { get; } = CreateNetwork();

    public static ObjectTable<Link> Link { get; } = CreateLink();

    public static ObjectTable<Clock> Clock { get; } = CreateClock();

    public static ObjectTable<Cable> Cable { get; } = CreateCable();

    public static ObjectTable<Rig> Rig { get; } = CreateRig();

    private static ObjectTable<Zone> CreateZone()
    {
        var table = new TableBuilder<Zone>("zone", "zone", "A declared place with its side and its walking order.");
        var id = table.Required("id", Kinds.Id<Zone>(), static zone => zone.Id, "The id that devices name.");
        var name = table.Optional("name", Kinds.Text, static zone => zone.Name, "What people call the place.");
        var side = table.Default(
            "side",
            new ClosedWordKind<ZoneSide>(
                "zoneSide",
                ("none", ZoneSide.None),
                ("house-left", ZoneSide.HouseLeft),
                ("house-right", ZoneSide.HouseRight),
                ("centre", ZoneSide.Centre)
            )
            {
                Elsewhere =
                [
                    ("stage-right", "house-left", "which is stage right seen by the audience"),
                    ("stage-left", "house-right", "which is stage left seen by the audience"),
                ],
            },
            ZoneSide.None,
            static zone => zone.Side,
            "The side as the audience sees it; house left is stage right. Absent means none."
        );
        var walk = table.OptionalValue("walk", Kinds.PointNumber, static zone => zone.Walk, "Position in the walking order of a line check, from 1.");
        var near = table.List("near", Kinds.Id<Zone>(), static zone => zone.Near, "Zones close by.");
        var extensions = table.Extensions(static zone => zone.Extensions);
        return table.Build(
            (in Slots read) =>
                new Zone
                {
                    Id = id[read],
                    Name = name[read],
                    Side = side[read],
                    Walk = walk[read],
                    Near = near[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Clock> CreateClock()
    {
        var table = new TableBuilder<Clock>("clock", "clock", "A clock domain.");
        var id = table.Required("id", Kinds.Id<Clock>(), static clock => clock.Id, "The id that networks name.");
        var sampleRate = table.Required("sampleRate", Kinds.SampleRate, static clock => clock.SampleRate, "Sample rate in hertz.");
        var leader = table.Required("leader", Kinds.Id<Device>(), static clock => clock.Leader, "The device that leads the clock.");
        var backup = table.OptionalValue("backup", Kinds.Id<Device>(), static clock => clock.Backup, "The device that takes over.");
        var extensions = table.Extensions(static clock => clock.Extensions);
        return table.Build(
            (in Slots read) =>
                new Clock
                {
                    Id = id[read],
                    SampleRate = sampleRate[read],
                    Leader = leader[read],
                    Backup = backup[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Network> CreateNetwork()
    {
        var table = new TableBuilder<Network>("network", "network", "An audio network.");
        var id = table.Required("id", Kinds.Id<Network>(), static network => network.Id, "The id that links and streams name.");
        var name = table.Optional("name", Kinds.Text, static network => network.Name, "What people call the network.");
        var transport = table.Required(
            "transport",
            new OpenWordKind<Transport>("a transport", static word => new Transport(word), static word => word.Value, "rtp-l24", KnownWords.Transports),
            static network => network.Transport,
            "How audio travels: rtp-l24, rtp-l16, avtp-class-a, avtp-class-b, point-to-point, or another word."
        );
        var packet = table.OptionalValue(
            "packetMicroseconds",
            new IntKind(1, 100_000),
            static network => network.PacketMicroseconds,
            "Packet time in microseconds. Absent means the usual one of the transport."
        );
        var offset = table.OptionalValue(
            "presentationOffsetMicroseconds",
            new IntKind(1, 1_000_000),
            static network => network.PresentationOffsetMicroseconds,
            "Microseconds until receivers give a sample out, packet time included: the presentation offset of AVTP, the link offset or "
                + "receiver buffer of RTP. Absent means that only the packet time is known."
        );
        var clock = table.OptionalValue("clock", Kinds.Id<Clock>(), static network => network.Clock, "The clock domain.");
        var loopControl = table.Default(
            "loopControl",
            new ClosedWordKind<LoopControl>(
                "loopControl",
                ("none", LoopControl.None),
                ("spanning-tree", LoopControl.SpanningTree),
                ("ring-protocol", LoopControl.RingProtocol),
                ("seamless-duplicates", LoopControl.SeamlessDuplicates)
            ),
            LoopControl.None,
            static network => network.LoopControl,
            "What keeps a loop of links from flooding. Absent means none."
        );
        var extensions = table.Extensions(static network => network.Extensions);
        return table.Build(
            (in Slots read) =>
                new Network
                {
                    Id = id[read],
                    Name = name[read],
                    Transport = transport[read],
                    PacketMicroseconds = packet[read],
                    PresentationOffsetMicroseconds = offset[read],
                    Clock = clock[read],
                    LoopControl = loopControl[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Device> CreateDevice()
    {
        var table = new TableBuilder<Device>("device", "device", "A device of the rig.");
        var id = table.Required("id", Kinds.Id<Device>(), static device => device.Id, "The id that addresses start with.");
        var profile = table.Required("profile", ProfileTables.Id, static device => device.Profile, "The id of the profile that describes the device type.");
        var label = table.Optional("label", Kinds.Text, static device => device.Label, "What is written on the device.");
        var zone = table.OptionalValue("zone", Kinds.Id<Zone>(), static device => device.Zone, "The zone the device stands in.");
        var power = table.List("power", Kinds.Id<PowerSource>(), static device => device.Power, "Names of the supplies that feed the device.");
        var notes = table.Optional("notes", Kinds.Text, static device => device.Notes, "Anything a person should know.");
        var extensions = table.Extensions(static device => device.Extensions);
        return table.Build(
            (in Slots read) =>
                new Device
                {
                    Id = id[read],
                    Profile = profile[read],
                    Label = label[read],
                    Zone = zone[read],
                    Power = power[read],
                    Notes = notes[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Link> CreateLink()
    {
        var table = new TableBuilder<Link>("link", "link", "A network cable between two network jacks.");
        var id = table.Required("id", Kinds.Id<Link>(), static link => link.Id, "The id that paths name.");
        var network = table.Required("network", Kinds.Id<Network>(), static link => link.Network, "The network it belongs to.");
        var from = table.Required("from", Kinds.PointRange, static link => link.From, "One jack.");
        var to = table.Required("to", Kinds.PointRange, static link => link.To, "The other jack.");
        var medium = table.OptionalValue(
            "medium",
            new OpenWordKind<Medium>("a medium", static word => new Medium(word), static word => word.Value, "copper-solid", KnownWords.Media),
            static link => link.Medium,
            "What it is made of: copper-solid, copper-stranded, cat5e, cat6, cat6a, fibre-multimode, om1, om2, om3, om4, om5, "
                + "fibre-singlemode, os1, os2, coax, or another word."
        );
        var length = table.OptionalValue("lengthMetres", new DecimalNumberKind(100_000, positive: true), static link => link.LengthMetres, "Length in metres.");
        var speed = table.OptionalValue("speedMbps", new IntKind(1, 1_000_000), static link => link.SpeedMbps, "Speed in Mbit/s.");
        var extensions = table.Extensions(static link => link.Extensions);
        return table.Build(
            (in Slots read) =>
                new Link
                {
                    Id = id[read],
                    Network = network[read],
                    From = from[read],
                    To = to[read],
                    Medium = medium[read],
                    LengthMetres = length[read],
                    SpeedMbps = speed[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Cable> CreateCable()
    {
        var table = new TableBuilder<Cable>(
            "cable",
            "cable",
            "A cable, or a run of cables, from outputs to inputs, position by position; both ends on one device make a loop-back."
        );
        var from = table.Required("from", Kinds.PointRange, static cable => cable.From, "The outputs.");
        var to = table.Required("to", Kinds.PointRange, static cable => cable.To, "The inputs, as many as outputs.");
        var way = table.Optional("way", Kinds.Text, static cable => cable.Way, "The way of a loom or multicore it uses.");
        var extensions = table.Extensions(static cable => cable.Extensions);
        return table.Build(
            (in Slots read) =>
                new Cable
                {
                    From = from[read],
                    To = to[read],
                    Way = way[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<UnavailablePoints> CreateUnavailable()
    {
        var table = new TableBuilder<UnavailablePoints>("unavailablePoints", "unavailable entry", "Points that do not work.");
        var at = table.Required("at", Kinds.PointRange, static points => points.At, "The points.");
        var reason = table.Optional("reason", Kinds.Text, static points => points.Reason, "What is wrong with them.");
        var since = table.OptionalValue("since", Kinds.Date, static points => points.Since, "Since when.");
        var extensions = table.Extensions(static points => points.Extensions);
        return table.Build(
            (in Slots read) =>
                new UnavailablePoints
                {
                    At = at[read],
                    Reason = reason[read],
                    Since = since[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<ReservedPoints> CreateReserved()
    {
        var table = new TableBuilder<ReservedPoints>("reservedPoints", "reserved entry", "Points kept free for somebody else.");
        var at = table.Required("at", Kinds.PointRange, static points => points.At, "The points.");
        var reason = table.Optional("reason", Kinds.Text, static points => points.Reason, "For whom or what.");
        var extensions = table.Extensions(static points => points.Extensions);
        return table.Build(
            (in Slots read) =>
                new ReservedPoints
                {
                    At = at[read],
                    Reason = reason[read],
                    Extensions = extensions[read],
                }
        );
    }

    private static ObjectTable<Rig> CreateRig()
    {
        var table = new TableBuilder<Rig>("rig", "rig", "Devices, network links and cables.");
        var zones = table.List("zones", Zone, static rig => rig.Zones, "Declared places.");
        var clocks = table.List("clocks", Clock, static rig => rig.Clocks, "Clock domains.");
        var networks = table.List("networks", Network, static rig => rig.Networks, "Audio networks, in order of preference.");
        var devices = table.List("devices", Device, static rig => rig.Devices, "The devices; their order decides between equal places.");
        var links = table.List("links", Link, static rig => rig.Links, "Network cables.");
        var cables = table.List("cables", Cable, static rig => rig.Cables, "Audio cables from outputs to inputs.");
        var unavailable = table.List("unavailable", Unavailable, static rig => rig.Unavailable, "Points that do not work.");
        var reserved = table.List("reserved", Reserved, static rig => rig.Reserved, "Points kept free for somebody else.");
        var profiles = table.List(
            "profiles",
            ProfileTables.Profile,
            static rig => rig.Profiles,
            "Profiles written into the show; they win over every other source of profiles."
        );
        var extensions = table.Extensions(static rig => rig.Extensions);
        return table.Build(
            (in Slots read) =>
                new Rig
                {
                    Zones = zones[read],
                    Clocks = clocks[read],
                    Networks = networks[read],
                    Devices = devices[read],
                    Links = links[read],
                    Cables = cables[read],
                    Unavailable = unavailable[read],
                    Reserved = reserved[read],
                    Profiles = profiles[read],
                    Extensions = extensions[read],
                }
        );
    }
}
