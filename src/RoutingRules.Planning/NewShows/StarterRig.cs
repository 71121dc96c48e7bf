using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.NewShows;

/// <summary>The devices of a starting show before anything is placed, and the links between them.</summary>
internal sealed class StarterRig
{
    public const int SampleRate = 48_000;

    private const int TrunkMetres = 50;
    private const int StageMetres = 20;
    private const int LinkMbps = 1000;
    private const int LargestPayload = 1440;
    private const int BytesPerSample = 3;

    private static readonly StagePlace[] Usual = [StagePlace.StageRight, StagePlace.StageLeft, StagePlace.Stage, StagePlace.Riser];

    private static readonly Id<Zone> House = new("house");
    private static readonly Id<Zone> MonitorZone = new("monitors");
    private static readonly Id<Network> Network = new("audio");

    private readonly StarterOptions options;
    private readonly StarterProfiles profiles;

    public StarterRig(StarterOptions options, StarterProfiles profiles)
    {
        this.options = options;
        this.profiles = profiles;
        Desk = new Device
        {
            Id = new("desk"),
            Profile = options.Console,
            Label = "Console",
            Zone = House,
        };
        MonitorDesk = options.MonitorConsole is { } profile
            ? new Device
            {
                Id = new("desk-m"),
                Profile = profile,
                Label = "Monitor console",
                Zone = MonitorZone,
            }
            : null;
        var places = options.Boxes.Select((box, index) => box.Place ?? (options.Boxes.Count == 1 ? StagePlace.Stage : Usual[index % Usual.Length])).ToList();
        Boxes = options.Boxes.Select((box, index) => Box(box, places, index)).ToList();
        Places = places;
    }

    public Device Desk { get; }

    public Device? MonitorDesk { get; }

    public IReadOnlyList<Device> Boxes { get; }

    public IReadOnlyList<StagePlace> Places { get; }

    /// <summary>Where racks and amplifiers that belong to no box stand.</summary>
    public Id<Zone>? MonitorPosition => MonitorDesk?.Zone;

    public static Id<Zone> ZoneOf(StagePlace place) =>
        new(
            Word(place) is "centre" ? "stage"
            : place == StagePlace.Riser ? "riser"
            : $"stage-{Word(place)}"
        );

    /// <summary>The end of a device's id.</summary>
    public static string Word(StagePlace place) =>
        place switch
        {
            StagePlace.StageRight => "right",
            StagePlace.StageLeft => "left",
            StagePlace.Riser => "riser",
            _ => "centre",
        };

    /// <summary>Why a ring cannot be closed; null when it can or none is wanted.</summary>
    public string? RingFault()
    {
        foreach (var device in options.IsRedundant ? Ring() : [])
        {
            if (profiles.Jacks(device.Profile) is var jacks && (jacks is null || jacks.Count < 2))
            {
                return $"a ring needs two network jacks at each device, and {device.Profile} has {(jacks is null ? "none" : "one")}";
            }
        }

        return null;
    }

    public Rig Make()
    {
        var (links, extra) = options.IsRedundant ? (RingLinks(), null) : StarLinks();
        return new Rig
        {
            Zones = Zones(),
            Clocks =
            [
                new Clock
                {
                    Id = new("c1"),
                    SampleRate = SampleRate,
                    Leader = Desk.Id,
                    Backup = MonitorDesk?.Id ?? Boxes[0].Id,
                },
            ],
            Networks =
            [
                new Network
                {
                    Id = Network,
                    Transport = Transport.RtpL24,
                    PacketMicroseconds = PacketTime(),
                    Clock = new Id<Clock>("c1"),
                    LoopControl = options.IsRedundant ? LoopControl.SpanningTree : LoopControl.None,
                },
            ],
            Devices = [Desk, .. MonitorDesk is null ? (Device[])[] : [MonitorDesk], .. Boxes, .. extra is null ? (Device[])[] : [extra]],
            Links = links,
        };
    }

    /// <summary>
    /// 1 ms where the widest stream fits into a packet of 1440 octets then (AES67-2018, clauses 6.3 and 7.2, from memory), else the shorter times it
    /// recommends.
    /// </summary>
    private int PacketTime()
    {
        var widest = Ring().Max(device => profiles.WidestStream(device.Profile));
        return widest <= MaxChannels(1000) ? 1000
            : widest <= MaxChannels(250) ? 250
            : 125;

        static int MaxChannels(int microseconds) => LargestPayload / (BytesPerSample * (SampleRate / 1000) * microseconds / 1000);
    }

    private static Device Box(StarterBox box, List<StagePlace> places, int index)
    {
        var before = 0;
        for (var i = 0; i < index; i++)
        {
            before += places[i] == places[index] ? 1 : 0;
        }

        var number = (before + 1).ToString(CultureInfo.InvariantCulture);
        var word = Word(places[index]);
        return new Device
        {
            Id = new(
                places.Count == 1 ? "box"
                : before == 0 ? $"box-{word}"
                : $"box-{word}-{number}"
            ),
            Profile = box.Profile,
            Label =
                places.Count == 1 ? "Stage box"
                : before == 0 ? $"Stage box {word}"
                : $"Stage box {word} {number}",
            Zone = ZoneOf(places[index]),
        };
    }

    private ValueList<Zone> Zones()
    {
        var zones = new List<Zone>();
        foreach (var place in (StagePlace[])[StagePlace.StageRight, StagePlace.Stage, StagePlace.Riser, StagePlace.StageLeft])
        {
            if (Places.Contains(place))
            {
                zones.Add(
                    new Zone
                    {
                        Id = ZoneOf(place),
                        Name = place switch
                        {
                            StagePlace.StageRight => "Stage right",
                            StagePlace.StageLeft => "Stage left",
                            StagePlace.Riser => "Drum riser",
                            _ => Boxes.Count == 1 ? "Stage" : "Stage centre",
                        },
                        Side = place switch
                        {
                            StagePlace.StageRight => ZoneSide.HouseLeft,
                            StagePlace.StageLeft => ZoneSide.HouseRight,
                            _ => ZoneSide.Centre,
                        },
                        Walk = zones.Count + 1,
                    }
                );
            }
        }

        if (MonitorDesk is not null)
        {
            zones.Add(
                new Zone
                {
                    Id = MonitorZone,
                    Name = "Monitor position",
                    Walk = zones.Count + 1,
                }
            );
        }

        zones.Add(
            new Zone
            {
                Id = House,
                Name = "Mix position",
                Walk = zones.Count + 1,
            }
        );
        return zones.ToValueList();
    }

    private List<Device> Ring() => [Desk, .. Boxes, .. MonitorDesk is null ? (Device[])[] : [MonitorDesk]];

    private ValueList<Link> RingLinks()
    {
        var ring = Ring();
        return ring.Select(
                (device, index) =>
                    Join(
                        index == 0 ? "trunk-1"
                            : index == ring.Count - 1 ? "trunk-2"
                            : string.Create(CultureInfo.InvariantCulture, $"cross-{index}"),
                        Jack(device, index == 0 ? 1 : 2),
                        Jack(ring[(index + 1) % ring.Count], index == ring.Count - 1 ? 2 : 1),
                        index == 0 || index == ring.Count - 1
                    )
            )
            .ToValueList();
    }

    /// <summary>All boxes at the console's own jacks where that does, else at a switch on stage.</summary>
    private (ValueList<Link> Links, Device? Switch) StarLinks()
    {
        var jacks = profiles.Jacks(Desk.Profile);
        if (MonitorDesk is null && (Boxes.Count == 1 || (jacks is { Bridged.IsEmpty: false, Count: { } count } && count >= Boxes.Count)))
        {
            return (
                Boxes
                    .Select(
                        (box, index) =>
                            Join(
                                Boxes.Count == 1 ? "trunk" : string.Create(CultureInfo.InvariantCulture, $"trunk-{index + 1}"),
                                Jack(Desk, index + 1),
                                Jack(box, 1),
                                true
                            )
                    )
                    .ToValueList(),
                null
            );
        }

        var middle = new Device
        {
            Id = new("switch"),
            Profile = options.Switch,
            Label = "Stage switch",
            Zone = MonitorPosition ?? Boxes[0].Zone,
        };
        var links = new List<Link> { Join("trunk", Jack(Desk, 1), Jack(middle, 1), true) };
        foreach (var device in (Device[])[.. MonitorDesk is null ? (Device[])[] : [MonitorDesk], .. Boxes])
        {
            links.Add(Join($"to-{device.Id}", Jack(middle, links.Count + 1), Jack(device, 1), false));
        }

        return (links.ToValueList(), middle);
    }

    private PointRange Jack(Device device, int number) => new(device.Id, profiles.Jacks(device.Profile)?.Id ?? new Id<PortGroup>("net"), number, number);

    private static Link Join(string id, PointRange from, PointRange to, bool isTrunk) =>
        new()
        {
            Id = new(id),
            Network = Network,
            From = from,
            To = to,
            Medium = isTrunk ? Medium.CopperSolid : Medium.CopperStranded,
            LengthMetres = isTrunk ? TrunkMetres : StageMetres,
            SpeedMbps = LinkMbps,
        };
}
