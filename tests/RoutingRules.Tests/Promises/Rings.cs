using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Tests.Assignment;
using static RoutingRules.Testing.SmallProfiles;

namespace RoutingRules.Tests.Promises;

/// <summary>
/// Puts devices into a show that are cabled in a ring, with demands at them, ways into the ring and ways out of it; the same ones for the same seed.
/// </summary>
internal static class Rings
{
    private const int Width = 4;

    /// <summary>The show with a ring more.</summary>
    public static Show Close(Show show, int seed)
    {
        var dice = new TinyDice(seed);
        var ring = Enumerable
            .Range(1, dice.From(2, 4))
            .Select(number => new Device
            {
                Id = new($"ring-{number}"),
                Profile = new($"ring/{dice.Pick(["process", "process", "process", "passive", "select", "free"])}"),
                Zone = show.Rig.Zones.IsEmpty ? null : dice.Pick(show.Rig.Zones).Id,
            })
            .ToArray();
        var cables = new List<Cable>();
        for (var i = 0; i < ring.Length; i++)
            cables.Add(new Cable { From = Run(ring[i], "out", 1, 2), To = Run(ring[(i + 1) % ring.Length], "in", 1, 2) });

        cables.AddRange(Ends(dice, show, ring));
        var members = ring.Select(device => device.Id).ToValueList();
        var sources = show.Feeds.Select(feed => feed.Source).Where(source => source.Width <= 2).ToList();
        var feeds = sources.Count == 0 ? [] : Enumerable.Range(1, 3).Select(number => Feed(dice, ring, members, dice.Pick(sources), number)).ToList();
        var sinks = show.Lines.SelectMany(line => line.To).Where(sink => sink.Width == 1).ToList();
        var lines = sinks.Count == 0 ? [] : Enumerable.Range(1, 2).Select(number => Line(dice, ring, members, dice.Pick(sinks), number)).ToList();
        return show with
        {
            Rig = show.Rig with
            {
                Devices = [.. show.Rig.Devices, .. ring],
                Profiles =
                [
                    .. show.Rig.Profiles,
                    Through("process", ThroughKind.Process),
                    Through("passive", ThroughKind.Passive),
                    Through("select", ThroughKind.Select),
                    Free,
                ],
                Cables = [.. cables, .. show.Rig.Cables],
            },
            Feeds = [.. show.Feeds, .. feeds],
            Lines = [.. show.Lines, .. lines],
            Patch = show.Patch with
            {
                Routes =
                [
                    .. show.Patch.Routes,
                    .. ring.Where(device => device.Profile.Value == "ring/free")
                        .Select(device => new Route { From = Run(device, "in", 1, 2), To = Run(device, "out", 1, 2) }),
                ],
                Inputs =
                [
                    .. show.Patch.Inputs,
                    .. ring.Where(_ => dice.In(30)).Select(device => new InputSettings { At = Run(device, "in", 1, 1), Phantom = dice.In(50) }),
                ],
                Labels =
                [
                    .. show.Patch.Labels,
                    .. ring.Where(_ => dice.In(50)).Select(device => new PointLabel { At = Run(device, "out", 1, 1), Text = "Round" }),
                ],
            },
        };
    }

    // Into a free input of the ring from a free output, and from an output of the ring into a free input: a second cable there.
    private static IEnumerable<Cable> Ends(TinyDice dice, Show show, Device[] ring)
    {
        var free = Points(show, PortKind.Output).Where(point => !show.Rig.Cables.Any(cable => Holds(cable.From, point))).ToArray();
        var open = Points(show, PortKind.Input).Where(point => !show.Rig.Cables.Any(cable => Holds(cable.To, point))).ToArray();
        if (free.Length > 0)
            yield return new Cable { From = One(dice.Pick(free)), To = Run(ring[0], "in", 3, 3) };

        if (open.Length > 0)
            yield return new Cable { From = Run(dice.Pick(ring), "out", 1, 1), To = One(dice.Pick(open)) };
    }

    private static Feed Feed(TinyDice dice, Device[] ring, ValueList<Id<Device>> members, PointRange source, int number)
    {
        var first = dice.From(1, Width - source.Width + 1);
        return new Feed
        {
            Id = new($"round-{number}"),
            Source = source,
            Role = dice.Pick([FeedRole.Main, FeedRole.Monitor, FeedRole.InEar, FeedRole.Talkback]),
            To =
            [
                dice.In(60)
                    ? new Destination { At = Run(dice.Pick(ring), dice.Pick(["in", "out"]), first, first + source.Width - 1) }
                    : new Destination { Devices = members },
            ],
        };
    }

    private static Line Line(TinyDice dice, Device[] ring, ValueList<Id<Device>> members, PointRange sink, int number) =>
        new()
        {
            Id = new($"turn-{number}"),
            Kind = LineKind.Line,
            From =
                dice.In(40) ? new LineOrigin { At = [Run(dice.Pick(ring), "in", 1, 1)] }
                : dice.In(50) ? new LineOrigin { Source = Run(dice.Pick(ring), "out", 1, 1) }
                : new LineOrigin { Devices = members },
            To = [sink],
        };

    private static IEnumerable<Point> Points(Show show, PortKind kind) =>
        from device in show.Rig.Devices
        from profile in show.Rig.Profiles.Where(profile => profile.Id == device.Profile).Take(1)
        from grouped in profile.PortGroups
        where grouped.Kind == kind
        from number in Enumerable.Range(1, grouped.Count ?? 0)
        select new Point(device.Id, grouped.Id, number);

    private static bool Holds(PointRange range, Point point) =>
        range.Device == point.Device && range.Group == point.Group && range.First <= point.Number && point.Number <= range.Last;

    private static PointRange One(Point point) => new(point.Device, point.Group, point.Number, point.Number);

    private static PointRange Run(Device device, string group, int first, int last) => new(device.Id, new(group), first, last);

    private static DeviceProfile Free => Profile("free") with { Routing = [Entry("in", "out", RoutingMode.Free)] };

    private static DeviceProfile Through(string id, ThroughKind kind) =>
        Profile(id) with
        {
            Through =
            [
                new()
                {
                    Kind = kind,
                    From = new("in"),
                    To = new("out"),
                    Phantom = kind == ThroughKind.Passive,
                    LatencyMilliseconds = 1,
                },
            ],
        };

    private static DeviceProfile Profile(string id) =>
        new()
        {
            Id = new($"ring/{id}"),
            Kind = DeviceKind.Processor,
            Name = "Ring device",
            PortGroups =
            [
                Group("in", PortKind.Input, Width) with
                {
                    Level = SignalLevel.Line,
                    Phantom = true,
                },
                Group("out", PortKind.Output, Width) with
                {
                    Level = SignalLevel.Line,
                },
            ],
            SampleRates = [48_000],
        };
}
