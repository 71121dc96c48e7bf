using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Lines;

/// <summary>Two consoles that get the first four inputs of a box, and a passive split with two legs that pass phantom power and one that does not.</summary>
internal static class LineRig
{
    public static DeviceProfile Split { get; } =
        new()
        {
            Id = new("test/split"),
            Kind = DeviceKind.Split,
            Name = "Test split",
            PortGroups =
            [
                SmallProfiles.Group("in", PortKind.Input, 4) with
                {
                    Level = SignalLevel.Mic,
                },
                SmallProfiles.Group("one", PortKind.Output, 4) with
                {
                    Level = SignalLevel.Mic,
                },
                SmallProfiles.Group("two", PortKind.Output, 4) with
                {
                    Level = SignalLevel.Mic,
                },
                SmallProfiles.Group("isolated", PortKind.Output, 4) with
                {
                    Level = SignalLevel.Mic,
                    Isolated = true,
                },
            ],
            Through =
            [
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("one"),
                    Phantom = true,
                },
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("two"),
                    Phantom = true,
                },
                new()
                {
                    Kind = ThroughKind.Passive,
                    From = new("in"),
                    To = new("isolated"),
                },
            ],
        };

    public static Show Show(params Line[] lines) =>
        Of(("desk", SmallProfiles.Console), ("mon", SmallProfiles.Console), ("box", SmallProfiles.Box), ("split", Split), ("amp", SmallProfiles.Amplifier))
            .With(Stream("s", "box/transmit/1-4", "desk/receive/1-4", "mon/receive/1-4")) with
        {
            Lines = lines.ToValueList(),
        };

    public static Show Inputs(this Show show, params InputSettings[] inputs) => show with { Patch = show.Patch with { Inputs = inputs.ToValueList() } };

    public static Show Cables(this Show show, params Cable[] cables) => show with { Rig = show.Rig with { Cables = cables.ToValueList() } };

    public static InputSettings Phantom(string at, bool? on) => new() { At = At(at), Phantom = on };

    public static InputSettings Gain(string at, string owner, params string[] followers) =>
        new()
        {
            At = At(at),
            GainOwner = new(owner),
            GainFollowers = followers.Select(id => new Id<Device>(id)).ToValueList(),
        };

    public static Line Needs(this Line line, PhantomNeed need) => line with { Phantom = need };
}
