using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <content>The rig and its profiles.</content>
internal sealed partial class ModelMaker
{
    public DeviceProfile Profile() =>
        new()
        {
            Id = ProfileId(),
            Version = Flip() ? 1 : Number(1, 999_999),
            Kind = new DeviceKind(Word()),
            Name = FilledText(),
            PortGroups = List(PortGroup),
            Routing = List(() =>
                new RoutingEntry
                {
                    From = Id<PortGroup>(),
                    To = Id<PortGroup>(),
                    Mode = Enum<RoutingMode>(),
                    BlockSize = MaybeValue(() => Number(1, 65_535)),
                    Reordering = Flip(),
                    Clearable = Flip(),
                }
            ),
            Through = List(() =>
                new ThroughEntry
                {
                    Kind = Enum<ThroughKind>(),
                    From = Id<PortGroup>(),
                    To = Id<PortGroup>(),
                    Phantom = Flip(),
                    LatencyMilliseconds = MaybeValue(Milliseconds),
                }
            ),
            FactoryRoutes = List(() => new FactoryRoute { From = GroupPoints(), To = GroupPoints() }),
            Limits = Maybe(() =>
                new ProfileLimits
                {
                    StreamsSent = MaybeValue(() => Number(0, 65_535)),
                    StreamsReceived = MaybeValue(() => Number(0, 65_535)),
                    Hops = MaybeValue(() => Number(0, 65_535)),
                    LabelLength = MaybeValue(() => Number(1, 65_535)),
                }
            ),
            LatencyMilliseconds = List(() => new GroupLatency { Group = Id<PortGroup>(), Value = Milliseconds() }),
            SampleRates = List(() => Number(8_000, 384_000)),
            Notes = Maybe(Text),
            Extensions = Extensions(),
        };

    private Id<DeviceProfile> ProfileId() => new(string.Join('/', Enumerable.Range(0, random.Next(1, 4)).Select(_ => Name())));

    private PortGroup PortGroup()
    {
        var counted = Flip();
        return new PortGroup
        {
            Id = Id<PortGroup>(),
            Kind = Enum<PortKind>(),
            Count = counted ? Number(1, 65_535) : null,
            CountByRate = counted ? default : List(() => new RateCount { SampleRate = Number(8_000, 384_000), Count = Number(0, 65_535) }, min: 1),
            Connector = MaybeValue(() => new Connector(Word())),
            ChannelsPerConnector = Flip() ? 1 : Number(1, 1024),
            PanelLabels = List(Text),
            Level = MaybeValue(() => new SignalLevel(Word())),
            Isolated = Flip(),
            Phantom = Flip(),
            Paired = Flip(),
            InEar = Flip(),
            BlockSize = MaybeValue(() => Number(1, 65_535)),
            Carrier = MaybeValue(() => GroupPoints(single: true)),
            RateConverter = Flip(),
            Bridged = List(() => new BridgedJacks { Jacks = Numbers() }),
            LabelLength = MaybeValue(() => Number(1, 65_535)),
            Extensions = Extensions(),
        };
    }

    private Rig Rig() =>
        new()
        {
            Zones = List(() =>
                new Zone
                {
                    Id = Id<Zone>(),
                    Name = Maybe(Text),
                    Side = Enum<ZoneSide>(),
                    Walk = MaybeValue(() => Number(1, 99_999)),
                    Near = List(Id<Zone>),
                    Extensions = Extensions(),
                }
            ),
            Clocks = List(() =>
                new Clock
                {
                    Id = Id<Clock>(),
                    SampleRate = Number(8_000, 384_000),
                    Leader = Id<Device>(),
                    Backup = MaybeValue(Id<Device>),
                    Extensions = Extensions(),
                }
            ),
            Networks = List(() =>
                new Network
                {
                    Id = Id<Network>(),
                    Name = Maybe(Text),
                    Transport = new Transport(Word()),
                    PacketMicroseconds = MaybeValue(() => Number(1, 100_000)),
                    PresentationOffsetMicroseconds = MaybeValue(() => Number(1, 1_000_000)),
                    Clock = MaybeValue(Id<Clock>),
                    LoopControl = Enum<LoopControl>(),
                    Extensions = Extensions(),
                }
            ),
            Devices = List(() =>
                new Device
                {
                    Id = Id<Device>(),
                    Profile = ProfileId(),
                    Label = Maybe(Text),
                    Zone = MaybeValue(Id<Zone>),
                    Power = List(Id<PowerSource>),
                    Notes = Maybe(Text),
                    Extensions = Extensions(),
                }
            ),
            Links = List(() =>
                new Link
                {
                    Id = Id<Link>(),
                    Network = Id<Network>(),
                    From = Points(),
                    To = Points(),
                    Medium = MaybeValue(() => new Medium(Word())),
                    LengthMetres = MaybeValue(Metres),
                    SpeedMbps = MaybeValue(() => Number(1, 1_000_000)),
                    Extensions = Extensions(),
                }
            ),
            Cables = List(() =>
                new Cable
                {
                    From = Points(),
                    To = Points(),
                    Way = Maybe(Text),
                    Extensions = Extensions(),
                }
            ),
            Unavailable = List(() =>
                new UnavailablePoints
                {
                    At = Points(),
                    Reason = Maybe(Text),
                    Since = MaybeValue(Date),
                    Extensions = Extensions(),
                }
            ),
            Reserved = List(() =>
                new ReservedPoints
                {
                    At = Points(),
                    Reason = Maybe(Text),
                    Extensions = Extensions(),
                }
            ),
            Profiles = random.Next(3) == 0 ? List(Profile) : default,
            Extensions = Extensions(),
        };
}
