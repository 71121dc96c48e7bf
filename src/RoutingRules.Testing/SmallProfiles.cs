using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Small invented profiles for tests: few points, so that a person can follow every one.</summary>
public static class SmallProfiles
{
    /// <summary>
    /// Console: 8 aux, 2 main, 8 channels, 2 in, 2 out; 8 transmit slots in blocks of 4, 8 receive slots in blocks of 4; free routing; factory aux 1-4 to
    /// transmit 1-4 and main to out.
    /// </summary>
    public static DeviceProfile Console { get; } =
        new()
        {
            Id = new("test/console"),
            Kind = DeviceKind.Console,
            Name = "Test console",
            PortGroups =
            [
                Group("aux", PortKind.Source, 8),
                Group("main", PortKind.Source, 2),
                Group("channel", PortKind.Sink, 8) with
                {
                    LabelLength = 8,
                },
                Group("in", PortKind.Input, 2) with
                {
                    Level = SignalLevel.Mic,
                    Phantom = true,
                },
                Group("out", PortKind.Output, 2) with
                {
                    Level = SignalLevel.Line,
                },
                Group("transmit", PortKind.Transmit, 8) with
                {
                    BlockSize = 4,
                },
                Group("receive", PortKind.Receive, 8) with
                {
                    BlockSize = 4,
                },
                Network(2),
            ],
            Routing =
            [
                Entry("aux", "transmit", RoutingMode.Free),
                Entry("main", "transmit", RoutingMode.Free),
                Entry("aux", "out", RoutingMode.Free),
                Entry("main", "out", RoutingMode.Free),
                Entry("receive", "channel", RoutingMode.Free),
                Entry("in", "channel", RoutingMode.Free),
            ],
            FactoryRoutes = [Factory("aux", 1, 4, "transmit", 1), Factory("main", 1, 2, "out", 1), Factory("receive", 1, 8, "channel", 1)],
            Limits = new()
            {
                StreamsSent = 2,
                StreamsReceived = 2,
                LabelLength = 8,
            },
        };

    /// <summary>Stage box: 8 in, 8 out, blocks of 4 both ways, fixed routing.</summary>
    public static DeviceProfile Box { get; } = MakeBox("test/box", false);

    /// <summary>The same box whose outputs can be set to nothing.</summary>
    public static DeviceProfile ClearableBox { get; } = MakeBox("test/box-clearable", true);

    /// <summary>Stage box with free routing: 8 in, 8 out, blocks of 4 both ways.</summary>
    public static DeviceProfile FreeBox { get; } =
        MakeBox("test/box-free", false) with
        {
            Routing = [Entry("in", "transmit", RoutingMode.Free), Entry("receive", "out", RoutingMode.Free), Entry("in", "out", RoutingMode.Free)],
        };

    /// <summary>Amplifier: 4 analogue inputs processed to 4 loudspeaker outputs.</summary>
    public static DeviceProfile Amplifier { get; } =
        new()
        {
            Id = new("test/amplifier"),
            Kind = DeviceKind.Amplifier,
            Name = "Test amplifier",
            PortGroups =
            [
                Group("in", PortKind.Input, 4) with
                {
                    Level = SignalLevel.Line,
                },
                Group("out", PortKind.Output, 4) with
                {
                    Level = SignalLevel.Speaker,
                },
            ],
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Process,
                    From = new("in"),
                    To = new("out"),
                },
            ],
        };

    /// <summary>All of them.</summary>
    public static ValueList<DeviceProfile> All => [Console, Box, ClearableBox, FreeBox, Amplifier];

    /// <summary>A group of a kind with a number of points.</summary>
    public static PortGroup Group(string id, PortKind kind, int count) =>
        new()
        {
            Id = new(id),
            Kind = kind,
            Count = count,
        };

    /// <summary>A group <c>net</c> of bridged jacks.</summary>
    public static PortGroup Network(int count) => Group("net", PortKind.Network, count) with { Bridged = [new() { Jacks = new(1, count) }] };

    /// <summary>A routing entry.</summary>
    public static RoutingEntry Entry(string from, string to, RoutingMode mode) =>
        new()
        {
            From = new(from),
            To = new(to),
            Mode = mode,
        };

    /// <summary>A factory route of some width.</summary>
    public static FactoryRoute Factory(string from, int first, int last, string to, int toFirst) =>
        new() { From = new(new(from), first, last), To = new(new(to), toFirst, toFirst + last - first) };

    private static DeviceProfile MakeBox(string id, bool clearable) =>
        new()
        {
            Id = new(id),
            Kind = DeviceKind.StageBox,
            Name = "Test box",
            PortGroups =
            [
                Group("in", PortKind.Input, 8) with
                {
                    Level = SignalLevel.Mic,
                    Phantom = true,
                },
                Group("out", PortKind.Output, 8) with
                {
                    Level = SignalLevel.Line,
                },
                Group("transmit", PortKind.Transmit, 8) with
                {
                    BlockSize = 4,
                },
                Group("receive", PortKind.Receive, 8) with
                {
                    BlockSize = 4,
                },
                Network(2),
            ],
            Routing = [Entry("in", "transmit", RoutingMode.Fixed), Entry("receive", "out", RoutingMode.Fixed) with { Clearable = clearable }],
            Limits = new()
            {
                StreamsSent = 2,
                StreamsReceived = 2,
                LabelLength = 12,
            },
        };
}
