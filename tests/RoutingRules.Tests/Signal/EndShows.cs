using RoutingRules.Checking.Rules.Hearing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using RoutingRules.Tests.Checking.Rules;
using static RoutingRules.Testing.SmallProfiles;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Signal;

/// <summary>Devices that people hear.</summary>
internal static class EndShows
{
    private static readonly InEarLimiterMissing Rule = new();

    public static DeviceProfile Profile(string id, DeviceKind kind, params PortGroup[] groups) =>
        new()
        {
            Id = new(id),
            Kind = kind,
            Name = id,
            PortGroups = groups.ToValueList(),
        };

    public static DeviceProfile HeadphoneAmplifier { get; } =
        Profile(
            "test/phones",
            new DeviceKind("headphone-amplifier"),
            Group("in", PortKind.Input, 2),
            Group("out", PortKind.Output, 2) with
            {
                Level = SignalLevel.Headphone,
            }
        ) with
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
        };

    public static DeviceProfile Selector { get; } =
        Profile(
            "test/selector",
            new DeviceKind("selector"),
            Group("in-a", PortKind.Input, 2),
            Group("in-b", PortKind.Input, 2),
            Group("out", PortKind.Output, 2)
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

    public static Show Show((string Id, DeviceProfile Profile)[] devices, string at, params Cable[] cables)
    {
        var show = Of([("desk", SmallProfiles.Console), ("box", ClearableBox), .. devices]).With(Stream("s", "desk/transmit/1-4", "box/receive/1-4"));
        return show with
        {
            Rig = show.Rig with { Cables = cables.ToValueList() },
            Feeds = [Feed("mix", FeedRole.Monitor, "desk/aux/1", at) with { Limiter = false }],
        };
    }

    public static void ExpectEars(Show show, string at) =>
        Expect.One(
            Rule,
            show,
            Severity.Error,
            "/feeds/0/limiter",
            $"Feed 'mix' (monitor), which goes into somebody's ears at {at}, has no limiter.",
            "feed=mix"
        );
}
