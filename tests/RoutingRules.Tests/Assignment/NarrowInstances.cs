using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tests.Assignment;

/// <summary>Tiny shows whose links hold none to three streams in each direction, the same one for the same seed.</summary>
/// <remarks>
/// A stream of 2 channels takes 2.928 Mbit/s and one of 4 channels 5.232 Mbit/s (24 bit, 1 ms, 48 kHz). Of the speeds used, three quarters are 2.25, 3,
/// 5.25, 6, 7.5 and 10.5 Mbit/s.
/// </remarks>
public static class NarrowInstances
{
    private static readonly int[] Speeds = [3, 4, 4, 7, 7, 8, 10, 14];

    /// <summary>The instance of a seed.</summary>
    public static TinyInstance Make(int seed)
    {
        var tiny = TinyInstances.Make(seed);
        var dice = new TinyDice(seed + 1_000_000);
        var devices = tiny.Show.Rig.Devices.Where(device => HasJacks(tiny.Show.Rig, device)).ToList();
        var links = tiny.Show.Rig.Links.IsEmpty || dice.In(50) ? Links(dice, devices) : tiny.Show.Rig.Links;
        links = links.Select(link => link with { SpeedMbps = dice.In(90) ? dice.Pick(Speeds) : null }).ToValueList();
        var without =
            links.Count > 1 && dice.In(12) ? [dice.Pick(links).Id.Value]
            : links.All(link => !tiny.Options.Without.Contains(link.Id.Value)) ? WithoutLinks(tiny)
            : tiny.Options.Without;
        return tiny with
        {
            Show = tiny.Show with { Rig = tiny.Show.Rig with { Links = links } },
            Options = tiny.Options with { Without = without, LinkPercent = dice.In(15) ? dice.Pick([50.0, 60.0, 90.0]) : 75 },
        };
    }

    private static ValueList<string> WithoutLinks(TinyInstance tiny) =>
        tiny.Options.Without.Where(name => !name.StartsWith("link-", StringComparison.Ordinal)).ToValueList();

    private static bool HasJacks(Rig rig, Device device) =>
        rig.Profiles.First(profile => profile.Id == device.Profile).PortGroups.Any(group => group.Kind == PortKind.Network);

    // A row, a star or a row closed to a ring; jacks of a device are one switch.
    private static ValueList<Link> Links(TinyDice dice, List<Device> devices)
    {
        var isStar = dice.In(40);
        var links = new List<Link>();
        for (var i = 1; i < devices.Count; i++)
            links.Add(Link(i, devices[isStar ? 0 : i - 1], devices[i]));

        if (devices.Count > 2 && dice.In(40))
            links.Add(Link(devices.Count, devices[^1], devices[0]));
        else if (devices.Count > 1 && dice.In(15))
            links.Add(Link(devices.Count, devices[0], devices[1]));

        return links.ToValueList();
    }

    private static Link Link(int number, Device from, Device to) =>
        new()
        {
            Id = new($"link-{number}"),
            Network = new("net"),
            From = new(from.Id, new("net"), 1, 1),
            To = new(to.Id, new("net"), 2, 2),
        };
}
