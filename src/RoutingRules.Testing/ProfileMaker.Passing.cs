using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <content>Devices that pass signal on: processors, splits, selectors, digital multicores, racks, switches.</content>
internal sealed partial class ProfileMaker
{
    /// <summary>Line inputs processed to line outputs; some have one output more than inputs.</summary>
    public DeviceProfile Processor()
    {
        var count = dice.Grow(1, 4);
        return Passing("processor", DeviceKind.Processor, ThroughKind.Process, count, count + (dice.Chance(20) ? 1 : 0), SignalLevel.Line);
    }

    public DeviceProfile Amplifier()
    {
        var count = dice.Grow(1, 4);
        return Passing("amplifier", DeviceKind.Amplifier, ThroughKind.Process, count, count, SignalLevel.Speaker);
    }

    /// <summary>Inputs that reach two groups of outputs.</summary>
    public DeviceProfile Split()
    {
        var count = dice.Grow(1, 4);
        var split = Passing("split", DeviceKind.Split, ThroughKind.Passive, count, count, SignalLevel.Mic);
        return split with
        {
            PortGroups =
            [
                .. split.PortGroups.AsSpan(),
                SmallProfiles.Group("isolated", PortKind.Output, count) with
                {
                    Level = SignalLevel.Mic,
                    Isolated = true,
                },
            ],
            Through =
            [
                .. split.Through.AsSpan(),
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("isolated"),
                    Phantom = false,
                },
            ],
        };
    }

    /// <summary>Two groups of legs and the output between them.</summary>
    public DeviceProfile Selector()
    {
        var count = dice.Grow(1, 3);
        return New(
            "selector",
            new("selector"),
            [
                SmallProfiles.Group("in-a", PortKind.Input, count) with
                {
                    Level = SignalLevel.Line,
                },
                SmallProfiles.Group("in-b", PortKind.Input, count) with
                {
                    Level = SignalLevel.Line,
                },
                SmallProfiles.Group("out", PortKind.Output, count) with
                {
                    Level = SignalLevel.Line,
                },
            ]
        ) with
        {
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Select,
                    From = new("in-a"),
                    To = new("out"),
                },
                new()
                {
                    Kind = ThroughKind.Select,
                    From = new("in-b"),
                    To = new("out"),
                },
            ],
        };
    }

    public DeviceProfile CarrierEnd() => dice.Chance(50) ? MulticoreBox(dice.Grow(1, 8)) : MulticoreBridge(dice.Grow(1, 8));

    /// <summary>A box at the end of a digital multicore: its slots live on jack <c>mc/1</c>.</summary>
    public DeviceProfile MulticoreBox(int slots) =>
        New(
            "multicore-box",
            DeviceKind.StageBox,
            [
                SmallProfiles.Group("in", PortKind.Input, dice.Grow(1, 8)) with
                {
                    Level = SignalLevel.Mic,
                    Phantom = true,
                },
                SmallProfiles.Group("out", PortKind.Output, dice.Grow(1, 8)) with
                {
                    Level = SignalLevel.Line,
                },
                Carrier("transmit", PortKind.Transmit, slots),
                Carrier("receive", PortKind.Receive, slots + dice.Roll(0, 1)),
                SmallProfiles.Group("mc", PortKind.Network, 1),
            ]
        ) with
        {
            Routing =
            [
                SmallProfiles.Entry("in", "transmit", RoutingMode.Fixed),
                SmallProfiles.Entry("receive", "out", RoutingMode.Fixed) with
                {
                    Clearable = dice.Chance(30),
                },
            ],
            Limits = new() { Hops = 1, LabelLength = 10 },
        };

    /// <summary>A converter between the network and a digital multicore.</summary>
    public DeviceProfile MulticoreBridge(int slots) =>
        New(
            "multicore-bridge",
            new("converter"),
            [
                Slots("transmit", PortKind.Transmit),
                Slots("receive", PortKind.Receive),
                Carrier("mc-transmit", PortKind.Transmit, slots),
                Carrier("mc-receive", PortKind.Receive, slots),
                Jacks(),
                SmallProfiles.Group("mc", PortKind.Network, 1),
            ]
        ) with
        {
            Routing = [Free("receive", "mc-transmit"), Free("mc-receive", "transmit")],
        };

    /// <summary>In-ear transmitters: inputs only.</summary>
    public DeviceProfile TransmitterRack() =>
        New(
            "ear-rack",
            DeviceKind.TransmitterRack,
            [SmallProfiles.Group("in", PortKind.Input, 2 * dice.Grow(1, 3)) with { Level = SignalLevel.Line, Paired = true }]
        );

    /// <summary>Wireless receivers: signals born in the device, one at each output.</summary>
    public DeviceProfile ReceiverRack()
    {
        var count = dice.Grow(1, 4);
        return New(
            "wireless",
            DeviceKind.ReceiverRack,
            [SmallProfiles.Group("radio", PortKind.Source, count), SmallProfiles.Group("out", PortKind.Output, count) with { Level = SignalLevel.Mic }]
        ) with
        {
            Routing = [SmallProfiles.Entry("radio", "out", RoutingMode.Fixed)],
        };
    }

    public DeviceProfile Switch(int jacks) => New("switch", DeviceKind.Switch, [SmallProfiles.Network(jacks)]);

    private DeviceProfile Passing(string name, DeviceKind kind, ThroughKind through, int inputs, int outputs, SignalLevel level) =>
        New(
            name,
            kind,
            [
                SmallProfiles.Group("in", PortKind.Input, inputs) with
                {
                    Level = level == SignalLevel.Mic ? SignalLevel.Mic : SignalLevel.Line,
                },
                SmallProfiles.Group("out", PortKind.Output, outputs) with
                {
                    Level = level,
                },
            ]
        ) with
        {
            Through =
            [
                new()
                {
                    Kind = through,
                    From = new("in"),
                    To = new("out"),
                    Phantom = through == ThroughKind.Passive,
                    LatencyMilliseconds = through == ThroughKind.Process ? 0.8 : null,
                },
            ],
        };

    private static PortGroup Carrier(string id, PortKind kind, int count) => SmallProfiles.Group(id, kind, count) with { Carrier = new(new("mc"), 1, 1) };
}
