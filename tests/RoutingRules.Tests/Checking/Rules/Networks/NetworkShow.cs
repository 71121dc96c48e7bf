using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Testing;
using static RoutingRules.Testing.SmallShow;

namespace RoutingRules.Tests.Checking.Rules.Networks;

/// <summary>Short ways to write networks in tests.</summary>
internal static class NetworkShow
{
    /// <summary>A switch of eight bridged jacks.</summary>
    public static DeviceProfile Switch { get; } =
        new()
        {
            Id = new("test/switch"),
            Kind = DeviceKind.Switch,
            Name = "Test switch",
            PortGroups = [SmallProfiles.Network(8)],
        };

    /// <summary>A desk, and boxes <c>a</c>, <c>b</c> … of free routing, without links.</summary>
    public static Show Boxes(params string[] boxes) => Of([("desk", SmallProfiles.Console), .. boxes.Select(box => (box, SmallProfiles.FreeBox))]);

    public static Link Link(string id, string from, string to, string network = "net") =>
        new()
        {
            Id = new(id),
            Network = new(network),
            From = At(from),
            To = At(to),
            SpeedMbps = 1000,
        };

    public static Show With(this Show show, params Link[] links) => show with { Rig = show.Rig with { Links = links.ToValueList() } };

    public static Show With(this Show show, Transport transport, int? packetMicroseconds = null) =>
        show with
        {
            Rig = show.Rig with { Networks = [show.Rig.Networks[0] with { Transport = transport, PacketMicroseconds = packetMicroseconds }] },
        };

    /// <summary>The first network follows the first of the clocks.</summary>
    public static Show With(this Show show, params Clock[] clocks) =>
        show with
        {
            Rig = show.Rig with
            {
                Clocks = clocks.ToValueList(),
                Networks = [show.Rig.Networks[0] with { Clock = clocks[0].Id }, .. show.Rig.Networks.Skip(1)],
            },
        };

    /// <summary>One more network.</summary>
    public static Show WithNetwork(this Show show, string id, string? clock = null) =>
        show with
        {
            Rig = show.Rig with
            {
                Networks =
                [
                    .. show.Rig.Networks,
                    new()
                    {
                        Id = new(id),
                        Transport = Transport.RtpL24,
                        Clock = clock is null ? null : new(clock),
                    },
                ],
            },
        };

    public static Clock Clock(string id, string leader, string? backup = null, int rate = 48_000) =>
        new()
        {
            Id = new(id),
            SampleRate = rate,
            Leader = new(leader),
            Backup = backup is null ? null : new(backup),
        };

    /// <summary>Another profile for one device, under an id of its own.</summary>
    public static Show WithProfile(this Show show, string device, Func<DeviceProfile, DeviceProfile> change)
    {
        var old = show.Rig.Devices.First(one => one.Id.Value == device).Profile;
        var made = change(show.Rig.Profiles.First(profile => profile.Id == old)) with { Id = new($"test/own-{device}") };
        return show with
        {
            Rig = show.Rig with
            {
                Profiles = [.. show.Rig.Profiles.Where(profile => profile.Id != made.Id), made],
                Devices = show.Rig.Devices.Select(one => one.Id.Value == device ? one with { Profile = made.Id } : one).ToValueList(),
            },
        };
    }

    /// <summary>What a rule says with one option set.</summary>
    public static ValueList<Finding> Set(Rule rule, Show show, string option, double value)
    {
        ValueList<RuleOptionValue> options = [new() { Name = option, Value = value }];
        return RuleTester.Run(rule, show, options).Findings;
    }

    /// <summary>The show with its links, streams, devices or networks the other way round.</summary>
    public static Show Reversed(this Show show) =>
        show with
        {
            Rig = show.Rig with
            {
                Links = show.Rig.Links.Reverse().ToValueList(),
                Devices = show.Rig.Devices.Reverse().ToValueList(),
                Networks = show.Rig.Networks.Reverse().ToValueList(),
                Clocks = show.Rig.Clocks.Reverse().ToValueList(),
            },
            Feeds = show.Feeds.Reverse().ToValueList(),
            Patch = show.Patch with { Streams = show.Patch.Streams.Reverse().ToValueList() },
        };
}
