using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Hearing;

/// <summary>A console, a clearable box that gets its first eight slots, and a rack of in-ear transmitters cabled to the box's first four outputs.</summary>
internal static class EarRig
{
    public static DeviceProfile Rack { get; } =
        new()
        {
            Id = new("test/ear-rack"),
            Kind = DeviceKind.TransmitterRack,
            Name = "Test rack",
            PortGroups = [SmallProfiles.Group("in", PortKind.Input, 4) with { Level = SignalLevel.Line }],
        };

    /// <summary>Two stereo packs, as the panel says.</summary>
    public static DeviceProfile StereoRack { get; } =
        Rack with
        {
            PortGroups =
            [
                SmallProfiles.Group("in", PortKind.Input, 4) with
                {
                    Level = SignalLevel.Line,
                    Paired = true,
                    PanelLabels = ["1L", "1R", "2L", "2R"],
                },
            ],
        };

    /// <summary>The show with another rack of the same id.</summary>
    public static Show WithRack(this Show show, DeviceProfile rack) =>
        show with
        {
            Rig = show.Rig with { Profiles = [.. show.Rig.Profiles.Where(profile => profile.Id != Rack.Id), rack] },
        };

    /// <summary>The show with other cables.</summary>
    public static Show Cabled(Show show, params Cable[] cables) => show with { Rig = show.Rig with { Cables = cables.ToValueList() } };

    /// <summary>Factory routes put aux 1-4 on slots 1-4.</summary>
    public static Show Show(params Feed[] feeds)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.ClearableBox), ("rack", Rack))
            .With(Stream("a", "desk/transmit/1-4", "box/receive/1-4"), Stream("b", "desk/transmit/5-8", "box/receive/5-8"));
        return show with { Feeds = feeds.ToValueList(), Rig = show.Rig with { Cables = [Cable("box/out/1-4", "rack/in/1-4")] } };
    }

    public static Feed Ears(string id, string source, params string[] at) => Feed(id, FeedRole.InEar, source, at) with { Limiter = true };
}
