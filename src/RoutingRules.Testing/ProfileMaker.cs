using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Makes sound profiles: every routing entry, path and factory route fits its groups.</summary>
internal sealed partial class ProfileMaker(Dice dice)
{
    private int made;

    public DeviceProfile Any() =>
        dice.Roll(0, 9) switch
        {
            0 or 1 or 2 => Console(),
            3 or 4 or 5 => Box(),
            6 => CarrierEnd(),
            7 => Selector(),
            8 => dice.Chance(50) ? Split() : Recorder(),
            _ => Processor(),
        };

    /// <summary>Buses, channels, a few sockets, slots in blocks; some with an insert, through which a signal can come back.</summary>
    public DeviceProfile Console()
    {
        var transmit = Slots("transmit", PortKind.Transmit);
        var receive = Slots("receive", PortKind.Receive);
        var aux = SmallProfiles.Group("aux", PortKind.Source, dice.Grow(1, 8));
        var main = SmallProfiles.Group("main", PortKind.Source, 2);
        var channel = SmallProfiles.Group("channel", PortKind.Sink, dice.Grow(2, 8)) with { LabelLength = 8 };
        List<PortGroup> groups = [aux, main, channel];
        var hasInputs = dice.Chance(60);

        // Channels that inputs may take one by one would break blocks, so blocks are for consoles without inputs.
        List<RoutingEntry> routing =
        [
            Free("aux", "transmit"),
            Free("main", "transmit"),
            hasInputs ? Free("receive", "channel") : FreeOrBlocks(receive, "channel"),
        ];
        List<FactoryRoute> factory = [];
        if (hasInputs)
        {
            groups.Add(SmallProfiles.Group("in", PortKind.Input, dice.Grow(1, 4)) with { Level = SignalLevel.Mic, Phantom = true });
            routing.Add(Free("in", "channel"));
        }

        if (dice.Chance(70))
        {
            var count = dice.Grow(1, 4);
            groups.Add(SmallProfiles.Group("out", PortKind.Output, count) with { Level = SignalLevel.Line });
            routing.AddRange([Free("aux", "out"), Free("main", "out")]);
            AddFactory(factory, 40, "main", 2, "out", count);
        }

        List<ThroughEntry> through = [];
        if (dice.Chance(25))
        {
            var count = dice.Grow(1, 3);
            groups.AddRange([
                SmallProfiles.Group("insert-send", PortKind.Sink, count),
                SmallProfiles.Group("insert-return", PortKind.Source, dice.Roll(count, count + 1)),
            ]);
            routing.AddRange([Free("aux", "insert-send"), Free("receive", "insert-send"), Free("insert-return", "transmit")]);
            through.Add(
                new()
                {
                    Kind = ThroughKind.Process,
                    From = new("insert-send"),
                    To = new("insert-return"),
                    LatencyMilliseconds = 1,
                }
            );
        }

        AddFactory(factory, 60, "aux", aux.Count!.Value, "transmit", Fewest(transmit));
        AddFactory(
            factory,
            60,
            "receive",
            Fewest(receive),
            "channel",
            channel.Count!.Value,
            routing.First(entry => entry.From.Value == "receive").BlockSize ?? 1
        );
        return New("console", DeviceKind.Console, [.. groups, transmit, receive, Jacks()]) with
        {
            Routing = routing.ToValueList(),
            Through = through.ToValueList(),
            FactoryRoutes = factory.ToValueList(),
            Limits = Limits(transmit, receive),
        };
    }

    /// <summary>Inputs and outputs, with fixed, clearable, free or block routing; group ends need not meet block ends.</summary>
    public DeviceProfile Box()
    {
        var transmit = Slots("transmit", PortKind.Transmit);
        var receive = Slots("receive", PortKind.Receive);
        List<PortGroup> groups = [SmallProfiles.Group("out", PortKind.Output, dice.Grow(1, 8)) with { Level = SignalLevel.Line }];
        List<RoutingEntry> routing =
        [
            dice.Roll(0, 3) switch
            {
                0 => SmallProfiles.Entry("receive", "out", RoutingMode.Fixed),
                1 => SmallProfiles.Entry("receive", "out", RoutingMode.Fixed) with { Clearable = true },
                2 => Free("receive", "out"),
                _ => FreeOrBlocks(receive, "out"),
            },
        ];
        if (dice.Chance(80))
        {
            groups.Add(
                SmallProfiles.Group("in", PortKind.Input, dice.Grow(1, 8)) with
                {
                    Level = dice.Pick([SignalLevel.Mic, SignalLevel.Line]),
                    Phantom = dice.Chance(60),
                }
            );
            routing.Add(SmallProfiles.Entry("in", "transmit", dice.Chance(70) ? RoutingMode.Fixed : RoutingMode.Free));
        }

        if (dice.Chance(15))
        {
            groups.Add(SmallProfiles.Group("digital", PortKind.Output, 2) with { Level = SignalLevel.Aes3, ChannelsPerConnector = 2 });
            routing.Add(SmallProfiles.Entry("receive", "digital", RoutingMode.Fixed));
        }

        return New("box", DeviceKind.StageBox, [.. groups, transmit, receive, Jacks()]) with
        {
            Routing = routing.ToValueList(),
            Limits = Limits(transmit, receive),
        };
    }

    /// <summary>Tracks that take from the network, and players.</summary>
    public DeviceProfile Recorder()
    {
        var transmit = Slots("transmit", PortKind.Transmit);
        var receive = Slots("receive", PortKind.Receive);
        var tracks = dice.Grow(1, 8);
        List<FactoryRoute> factory = [];
        AddFactory(factory, 70, "receive", Fewest(receive), "track", tracks);
        AddFactory(factory, 70, "play", tracks, "transmit", Fewest(transmit));
        return New(
            "recorder",
            DeviceKind.Recorder,
            [SmallProfiles.Group("track", PortKind.Sink, tracks), SmallProfiles.Group("play", PortKind.Source, tracks), transmit, receive, Jacks()]
        ) with
        {
            Routing = [Free("receive", "track"), Free("play", "transmit")],
            FactoryRoutes = factory.ToValueList(),
            Limits = Limits(transmit, receive),
        };
    }

    private DeviceProfile New(string kind, DeviceKind deviceKind, ReadOnlySpan<PortGroup> groups) =>
        new()
        {
            Id = new(string.Create(CultureInfo.InvariantCulture, $"made/{kind}-{++made}")),
            Kind = deviceKind,
            Name = $"Made {kind}",
            PortGroups = ValueList.Create(groups),
        };

    private PortGroup Slots(string id, PortKind kind)
    {
        var block = dice.Pick([1, 2, 2, 4]);
        var count = (block * dice.Grow(1, 4)) + (dice.Chance(25) ? dice.Roll(0, block - 1) : 0);
        var group = SmallProfiles.Group(id, kind, count) with { BlockSize = block == 1 && dice.Chance(50) ? null : block };
        return kind == PortKind.Transmit && dice.Chance(15)
            ? group with
            {
                Count = null,
                CountByRate = [new() { SampleRate = 48_000, Count = count }, new() { SampleRate = 96_000, Count = dice.Roll(1, count) }],
            }
            : group;
    }

    private PortGroup Jacks()
    {
        var count = dice.Roll(2, 3);
        return dice.Chance(85) ? SmallProfiles.Network(count) : SmallProfiles.Group("net", PortKind.Network, count);
    }

    private ProfileLimits? Limits(PortGroup transmit, PortGroup receive) =>
        dice.Chance(50)
            ? null
            : new()
            {
                StreamsSent = dice.Roll(1, Math.Max(1, Fewest(transmit))),
                StreamsReceived = dice.Roll(1, Math.Max(1, Fewest(receive))),
                LabelLength = 12,
            };

    private RoutingEntry FreeOrBlocks(PortGroup from, string to)
    {
        var block = from.BlockSize ?? 1;
        return block > 1 && from.Count % block == 0 && dice.Chance(40)
            ? SmallProfiles.Entry(from.Id.Value, to, RoutingMode.Block) with
            {
                BlockSize = block,
                Reordering = dice.Chance(50),
            }
            : Free(from.Id.Value, to);
    }

    private static RoutingEntry Free(string from, string to) => SmallProfiles.Entry(from, to, RoutingMode.Free);

    /// <summary>A factory route from the first points of a group to the first of another, in whole blocks.</summary>
    private void AddFactory(List<FactoryRoute> routes, int percent, string from, int fromCount, string to, int toCount, int block = 1)
    {
        var blocks = Math.Min(fromCount, toCount) / block;
        if (dice.Chance(percent) && blocks > 0)
        {
            routes.Add(SmallProfiles.Factory(from, 1, dice.Roll(1, blocks) * block, to, 1));
        }
    }

    private static int Fewest(PortGroup group) => group.Count ?? group.CountByRate.Min(entry => entry.Count);
}
