using RoutingRules.Model;
using RoutingRules.Profiles;
using static RoutingRules.Testing.SmallProfiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>A tiny show while more is added to it.</summary>
internal sealed class GrownShow
{
    private readonly TinyDice dice;
    private readonly Id<Device> console;
    private readonly List<Id<Device>> boxes;

    public GrownShow(TinyDice dice, Show tiny)
    {
        this.dice = dice;
        Show = tiny;
        console = tiny.Rig.Devices[0].Id;
        boxes = [.. tiny.Rig.Devices.Select(device => device.Id).Where(id => id.Value.StartsWith("box-", StringComparison.Ordinal))];
        if (dice.In(15))
            MakeBlocksOfOne();

        if (dice.In(20))
            RouteInBlocks();

        if (dice.In(55))
            AddProcessors();

        if (dice.In(20))
            AddPlayer();

        if (dice.In(20))
            AddMulticore();

        if (dice.In(30))
            AddNetwork();

        if (dice.In(30))
            AddMarks();

        if (dice.In(40))
            TakeAway();
    }

    public Show Show { get; private set; }

    private DeviceProfile Profile(Id<Device> id) => Show.Rig.Profiles.First(profile => profile.Id == Show.Rig.Devices.First(device => device.Id == id).Profile);

    private int Count(Id<Device> id, string group) => Profile(id).PortGroups.FirstOrDefault(found => found.Id.Value == group)?.Count ?? 0;

    private void Change(DeviceProfile profile) =>
        Show = Show with { Rig = Show.Rig with { Profiles = [.. Show.Rig.Profiles.Select(old => old.Id == profile.Id ? profile : old)] } };

    private void Add(string id, DeviceProfile profile, string zone) =>
        Show = Show with
        {
            Rig = Show.Rig with
            {
                Devices =
                [
                    .. Show.Rig.Devices,
                    new Device
                    {
                        Id = new(id),
                        Profile = new($"tiny/{id}"),
                        Zone = new(zone),
                    },
                ],
                Profiles = [.. Show.Rig.Profiles, profile with { Id = new($"tiny/{id}") }],
            },
        };

    private void Cable(PointRange from, PointRange to) =>
        Show = Show with { Rig = Show.Rig with { Cables = [.. Show.Rig.Cables, new Cable { From = from, To = to }] } };

    private void Route(PointRange? from, PointRange to) =>
        Show = Show with { Patch = Show.Patch with { Routes = [.. Show.Patch.Routes, new Route { From = from, To = to }] } };

    private static PointRange Run(Id<Device> device, string group, int first, int width = 1) => new(device, new(group), first, first + width - 1);

    private static DeviceProfile Device(DeviceKind kind, params PortGroup[] groups) =>
        new()
        {
            Id = new("tiny/any"),
            Kind = kind,
            Name = "Grown device",
            PortGroups = [.. groups],
        };

    // Every block becomes one slot, and every stream as many as it has channels.
    private void MakeBlocksOfOne()
    {
        foreach (var profile in Show.Rig.Profiles.ToArray())
            Change(
                profile with
                {
                    PortGroups = [.. profile.PortGroups.Select(group => group.BlockSize is null ? group : group with { BlockSize = 1 })],
                    Limits = null,
                }
            );

        Show = Show with
        {
            Patch = Show.Patch with
            {
                Streams =
                [
                    .. Show
                        .Patch.Streams.SelectMany(stream =>
                            Enumerable
                                .Range(0, stream.From.Width)
                                .Select(channel =>
                                    stream with
                                    {
                                        Id = new($"{stream.Id}-{channel + 1}"),
                                        From = Run(stream.From.Device, stream.From.Group.Value, stream.From.First + channel),
                                        To =
                                        [
                                            .. stream
                                                .To.Where(to => Channels(stream, to).First <= channel + 1 && Channels(stream, to).Last > channel)
                                                .Select(to => new StreamReceiver
                                                {
                                                    At = Run(to.At.Device, to.At.Group.Value, to.At.First + channel + 1 - Channels(stream, to).First),
                                                }),
                                        ],
                                    }
                                )
                        )
                        .Where(stream => !stream.To.IsEmpty),
                ],
            },
        };

        static NumberRange Channels(AudioStream stream, StreamReceiver to) => to.Channels ?? new(1, stream.From.Width);
    }

    private void RouteInBlocks()
    {
        var box = dice.Pick(boxes);
        var profile = Profile(box);
        Change(
            profile with
            {
                Routing =
                [
                    .. profile.Routing.Select(entry =>
                        entry.To.Value == "out" ? entry with { Mode = RoutingMode.Block, BlockSize = 2, Reordering = dice.In(50), Clearable = false } : entry
                    ),
                ],
            }
        );
        Show = Show with { Patch = Show.Patch with { Routes = [.. Show.Patch.Routes.Where(route => route.To.Device != box)] } };
        for (var first = 1; first + 1 <= Math.Min(Count(box, "out"), Count(box, "receive")); first += 2)
        {
            if (dice.In(50))
                Route(Run(box, "receive", first, 2), Run(box, "out", first, 2));
        }
    }

    private void AddProcessors()
    {
        var count = dice.From(1, 2);
        for (var i = 1; i <= count; i++)
        {
            var id = new Id<Device>($"proc-{i}");
            Add(id.Value, Processor(), "house");
            Feed(id, dice.In(15) ? console : dice.Pick(boxes));
            if (dice.In(30))
                Feed(id, dice.Pick(boxes));

            if (dice.In(50))
            {
                Add($"amp-{i}", Device(DeviceKind.Amplifier, Group("in", PortKind.Input, 2) with { Level = SignalLevel.Line }), "left");
                Cable(Run(id, "out", 1, 2), Run(new($"amp-{i}"), "in", 1, 2));
            }

            for (var number = 1; number <= 4; number++)
            {
                if (dice.In(12))
                    Route(dice.In(60) ? Run(id, "in", dice.From(1, 2)) : null, Run(id, "out", number));
            }

            if (dice.In(35) && !Show.Feeds.IsEmpty)
                Pin(Run(id, dice.In(60) ? "in" : "out", 1));
        }
    }

    private DeviceProfile Processor()
    {
        var device = Device(
            DeviceKind.Processor,
            Group("in", PortKind.Input, 2) with
            {
                Level = SignalLevel.Line,
            },
            Group("out", PortKind.Output, 4) with
            {
                Level = SignalLevel.Line,
            }
        );
        return dice.From(1, 4) switch
        {
            1 => device with
            {
                Through =
                [
                    new()
                    {
                        Kind = ThroughKind.Process,
                        From = new("in"),
                        To = new("out"),
                    },
                ],
            },
            2 => device with { Routing = [Entry("in", "out", RoutingMode.Fixed) with { Clearable = dice.In(50) }] },
            3 => device with
            {
                Routing = [Entry("in", "out", RoutingMode.Free)],
                FactoryRoutes = [Factory("in", 1, 2, "out", 1), Factory("in", 1, 2, "out", 3)],
            },
            _ => device with
            {
                PortGroups = [.. device.PortGroups, Group("core-in", PortKind.Sink, 4), Group("core-out", PortKind.Source, 4)],
                Routing = [Entry("in", "core-in", RoutingMode.Free), Entry("core-out", "out", RoutingMode.Free)],
                Through =
                [
                    new()
                    {
                        Kind = ThroughKind.Process,
                        From = new("core-in"),
                        To = new("core-out"),
                    },
                ],
                FactoryRoutes = [Factory("in", 1, 2, "core-in", 1), Factory("in", 1, 2, "core-in", 3), Factory("core-out", 1, 4, "out", 1)],
            },
        };
    }

    // An input takes one cable; an output may have several.
    private void Feed(Id<Device> processor, Id<Device> from)
    {
        var outs = Count(from, "out");
        for (var number = 1; number <= 2 && outs > 0; number++)
        {
            var at = Run(processor, "in", number);
            if (
                dice.In(80)
                && !Show.Rig.Cables.Any(cable =>
                    cable.To.Device == at.Device && cable.To.Group == at.Group && cable.To.First <= number && cable.To.Last >= number
                )
            )
                Cable(Run(from, "out", dice.From(1, outs)), at);
        }
    }

    private void Pin(PointRange at)
    {
        var feed = dice.Pick(Show.Feeds);
        if (feed.Source.Width == 1 && feed.To.Count < 3)
            Show = Show with { Feeds = [.. Show.Feeds.Select(old => old == feed ? old with { To = [.. old.To, new Destination { At = at }] } : old)] };
    }

    private void AddPlayer()
    {
        var size = Profile(console).PortGroups.First(group => group.Kind == PortKind.Transmit).BlockSize ?? 1;
        Add(
            "player",
            Device(
                DeviceKind.Recorder,
                Group("play", PortKind.Source, size),
                Group("transmit", PortKind.Transmit, size) with
                {
                    BlockSize = size,
                },
                Network(2)
            ) with
            {
                Routing = [Entry("play", "transmit", RoutingMode.Fixed)],
            },
            "house"
        );
        Show = Show with
        {
            Feeds =
            [
                .. Show.Feeds,
                new Feed
                {
                    Id = new("music"),
                    Source = Run(new("player"), "play", dice.From(1, size)),
                    To = [new Destination { Devices = [dice.Pick(boxes)] }],
                },
            ],
        };
        if (Show.Rig.Links.Count > 0)
            Link("player-link", "net", Run(console, "net", 4), Run(new("player"), "net", 1));
    }

    private void Link(string id, string network, PointRange from, PointRange to) =>
        Show = Show with
        {
            Rig = Show.Rig with
            {
                Links =
                [
                    .. Show.Rig.Links,
                    new Link
                    {
                        Id = new(id),
                        Network = new(network),
                        From = from,
                        To = to,
                    },
                ],
            },
        };

    private void AddMulticore()
    {
        var desk = Profile(console);
        var jack = new GroupRange(new("mc"), 1, 1);
        var isFree = dice.In(40);
        Change(
            desk with
            {
                PortGroups =
                [
                    .. desk.PortGroups,
                    Group("mc-send", PortKind.Transmit, 4) with
                    {
                        BlockSize = 4,
                        Carrier = jack,
                    },
                    Group("mc", PortKind.Network, 1),
                ],
                Routing = [.. desk.Routing, Entry("aux", "mc-send", RoutingMode.Free), Entry("main", "mc-send", RoutingMode.Free)],
                FactoryRoutes = dice.In(40) ? [.. desk.FactoryRoutes, Factory("aux", 1, 4, "mc-send", 1)] : desk.FactoryRoutes,
            }
        );
        Add(
            "mc-box",
            Device(
                DeviceKind.StageBox,
                Group("out", PortKind.Output, dice.From(2, 4)) with
                {
                    Level = SignalLevel.Line,
                },
                Group("mc-take", PortKind.Receive, 4) with
                {
                    BlockSize = 4,
                    Carrier = jack,
                },
                Group("mc", PortKind.Network, 1)
            ) with
            {
                Routing = [Entry("mc-take", "out", isFree ? RoutingMode.Free : RoutingMode.Fixed) with { Clearable = !isFree && dice.In(30) }],
                FactoryRoutes = isFree && dice.In(50) ? [Factory("mc-take", 1, 2, "out", 1)] : [],
            },
            "right"
        );
        Show = Show with { Rig = Show.Rig with { Networks = [.. Show.Rig.Networks, new() { Id = new("multicore"), Transport = Transport.PointToPoint }] } };
        Link("mc-link", "multicore", Run(console, "mc", 1), Run(new("mc-box"), "mc", 1));
        for (var number = 1; number <= 4; number++)
        {
            if (dice.In(25))
                Route(Run(console, "aux", dice.From(1, 5)), Run(console, "mc-send", number));
        }

        if (!Show.Feeds.IsEmpty && dice.In(60))
        {
            var feed = dice.Pick(Show.Feeds);
            Show = Show with
            {
                Feeds = [.. Show.Feeds.Select(old => old == feed ? old with { To = [.. old.To, new Destination { Devices = [new("mc-box")] }] } : old)],
            };
        }
    }

    // A second network beside the first: the same devices sit on both, or on one of them only; without links everything is joined.
    private void AddNetwork()
    {
        var second = new Network
        {
            Id = new("net-b"),
            Transport = Transport.RtpL24,
            PacketMicroseconds = 1000,
        };
        Show = Show with { Rig = Show.Rig with { Networks = dice.In(50) ? [.. Show.Rig.Networks, second] : [second, .. Show.Rig.Networks] } };
        var i = 0;
        foreach (var box in boxes.Where(_ => dice.In(65)))
            Link($"second-{++i}", "net-b", Run(console, "net", 3), Run(box, "net", 4));

        if (dice.In(50))
            Show = Show with
            {
                Patch = Show.Patch with { Streams = [.. Show.Patch.Streams.Select(stream => dice.In(30) ? stream with { Network = second.Id } : stream)] },
            };
    }

    private void AddMarks()
    {
        foreach (var device in Show.Rig.Devices)
        {
            foreach (var group in Profile(device.Id).PortGroups.Where(group => group.Kind is PortKind.Output or PortKind.Transmit or PortKind.Receive))
            {
                for (var number = 1; number <= (group.Count ?? 0); number++)
                {
                    if (dice.In(group.Kind == PortKind.Output ? 10 : 2))
                        Mark(Run(device.Id, group.Id.Value, number), dice.In(50));
                }
            }
        }
    }

    private void Mark(PointRange at, bool isDead) =>
        Show = Show with
        {
            Rig = isDead
                ? Show.Rig with
                {
                    Unavailable = [.. Show.Rig.Unavailable, new UnavailablePoints { At = at }],
                }
                : Show.Rig with
                {
                    Reserved = [.. Show.Rig.Reserved, new ReservedPoints { At = at }],
                },
        };

    private void TakeAway() =>
        Show = Show with
        {
            Patch = Show.Patch with
            {
                Routes = [.. Show.Patch.Routes.Where(_ => dice.In(80))],
                Streams =
                [
                    .. Show
                        .Patch.Streams.Where(_ => dice.In(85))
                        .Select(stream => dice.In(20) && stream.To.Count > 1 ? stream with { To = [.. stream.To.Take(stream.To.Count - 1)] } : stream),
                ],
            },
        };
}
