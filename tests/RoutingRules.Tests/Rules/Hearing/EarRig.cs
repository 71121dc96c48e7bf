using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Rules;

/// <summary>A console, a clearable box that gets its first eight slots, and a rack of in-ear transmitters cabled to the box's first four outputs.</summary>
internal static class EarRig
{
    public static DeviceProfile Rack { get; } = new()
    {
        Id = new("test/ear-rack"),
        Kind = DeviceKind.TransmitterRack,
        Name = "Test rack",
        PortGroups = [SmallProfiles.Group("in", PortKind.Input, 4) with { Level = SignalLevel.Line }],
    };

    /// <summary>Factory routes put aux 1-4 on slots 1-4.</summary>
    public static Show Show(params Feed[] feeds)
    {
        var show = Of(("desk", SmallProfiles.Console), ("box", SmallProfiles.ClearableBox), ("rack", Rack))
            .With(Stream("a", "desk/transmit/1-4", "box/receive/1-4"), Stream("b", "desk/transmit/5-8", "box/receive/5-8"));
        return show with { Feeds = feeds.ToValueList(), Rig = show.Rig with { Cables = [Cable("box/out/1-4", "rack/in/1-4")] } };
    }

    public static Feed Ears(string id, string source, params string[] at) => Feed(id, FeedRole.InEar, source, at) with { Limiter = true };
}
