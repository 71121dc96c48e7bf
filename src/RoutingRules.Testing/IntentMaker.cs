using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Testing;

/// <summary>Makes feeds and lines over a rig: every name resolves, pairs start on odd numbers, no two pins and no two lines' channels overlap.</summary>
internal sealed class IntentMaker(Dice dice, RigView rig)
{
    private static readonly FeedRole[] Roles =
    [
        FeedRole.Main,
        FeedRole.Sub,
        FeedRole.Fill,
        FeedRole.Monitor,
        FeedRole.Monitor,
        FeedRole.InEar,
        FeedRole.Record,
        FeedRole.Utility,
    ];

    private readonly HashSet<Point> pinned = [];

    public ValueList<Feed> Feeds()
    {
        var sources = rig.OfKind(PortKind.Source).ToArray();
        var feeds = new List<Feed>();
        for (var count = dice.Grow(0, 8); count > 0 && sources.Length > 0; count--)
        {
            var source = dice.Pick(sources);
            var width = source.Count > 1 && dice.Chance(30) ? 2 : 1;
            var to = Destinations(width);
            if (to.IsEmpty)
            {
                continue;
            }

            var role = dice.Pick(Roles);
            feeds.Add(
                new Feed
                {
                    Id = new(string.Create(CultureInfo.InvariantCulture, $"feed-{feeds.Count + 1}")),
                    Name = dice.Chance(50) ? $"{role} {feeds.Count + 1}" : null,
                    Role = role,
                    Source = Run(source, width),
                    To = to,
                    Set = role == FeedRole.Main && dice.Chance(60) ? "main" : null,
                    Part = role == FeedRole.Main && dice.Chance(80) ? dice.Pick(["left", "right", "low"]) : null,
                    Priority = dice.Pick([Priority.Critical, Priority.High, Priority.Normal, Priority.Normal, Priority.Low]),
                    Preferred = dice.Chance(20) ? dice.Roll(1, 8) : null,
                    Hold = dice.Chance(20) ? dice.Chance(70) : null,
                    Group = dice.Chance(20) ? dice.Pick(["drums", "strings"]) : null,
                    Spread = to.Count > 1 && dice.Chance(20),
                    SeparateFrom =
                        feeds.Count > 0 && dice.Chance(12)
                            ? [new() { Feed = dice.Pick(feeds).Id, By = dice.Pick([SeparationBy.Device, SeparationBy.Power, SeparationBy.Link]) }]
                            : [],
                    BackupOf = feeds.Count > 0 && dice.Chance(5) ? dice.Pick(feeds).Id : null,
                    Limiter = role == FeedRole.InEar ? true : null,
                }
            );
        }

        return feeds.ToValueList();
    }

    public ValueList<Line> Lines()
    {
        var lines = new List<Line>();
        for (var count = dice.Grow(0, 6); count > 0; count--)
        {
            var width = dice.Chance(20) ? 2 : 1;
            var to = Channels(width);
            if (to.IsEmpty || Origin(width) is not { } from)
            {
                continue;
            }

            lines.Add(
                new Line
                {
                    Id = new(string.Create(CultureInfo.InvariantCulture, $"line-{lines.Count + 1}")),
                    Name = dice.Chance(50) ? $"Source {lines.Count + 1}" : null,
                    Kind = dice.Pick([LineKind.Microphone, LineKind.Line]),
                    Phantom = dice.Pick([PhantomNeed.Either, PhantomNeed.Either, PhantomNeed.Required, PhantomNeed.Forbidden]),
                    Width = width,
                    From = from,
                    To = to,
                    Priority = dice.Pick([Priority.High, Priority.Normal]),
                    Preferred = dice.Chance(15) ? dice.Roll(1, 8) : null,
                    Hold = dice.Chance(20) ? true : null,
                    Group = dice.Chance(20) ? "strings" : null,
                }
            );
        }

        return lines.ToValueList();
    }

    private ValueList<Destination> Destinations(int width)
    {
        var entries = new List<Destination>();
        for (var count = dice.Grow(1, 3); count > 0; count--)
        {
            var zones = rig.Rig.Zones;
            switch (dice.Roll(0, 3))
            {
                case 0 when Pin(width) is { } at:
                    entries.Add(new Destination { At = at });
                    break;
                case 1 when zones.Count > 0:
                    entries.Add(new Destination { Zones = [dice.Pick(zones).Id], Devices = dice.Chance(20) ? [AnyDevice()] : [] });
                    break;
                default:
                    entries.Add(new Destination { Devices = dice.Chance(30) ? [.. new[] { AnyDevice(), AnyDevice() }.Distinct()] : [AnyDevice()] });
                    break;
            }
        }

        return entries.ToValueList();
    }

    private LineOrigin? Origin(int width)
    {
        var inputs = Wide(width, PortKind.Input);
        var players = Wide(width, PortKind.Source).Where(group => group.Profile.Kind != DeviceKind.Console).ToArray();
        return dice.Roll(0, 4) switch
        {
            0 when inputs.Length > 0 => new LineOrigin
            {
                At = dice.Chance(20) ? [.. new[] { Run(dice.Pick(inputs), width), Run(dice.Pick(inputs), width) }.Distinct()] : [Run(dice.Pick(inputs), width)],
            },
            1 when players.Length > 0 => new LineOrigin { Source = Run(dice.Pick(players), width) },
            2 when rig.Rig.Zones.Count > 0 => new LineOrigin { Zones = [dice.Pick(rig.Rig.Zones).Id] },
            _ => new LineOrigin { Devices = [AnyDevice()] },
        };
    }

    /// <summary>Channels and tracks, not inserts.</summary>
    private ValueList<PointRange> Channels(int width)
    {
        var strips = Wide(width, PortKind.Sink).Where(group => group.Profile.Through.All(path => path.From != group.Group.Id)).ToArray();
        var found = new List<PointRange>();
        for (var count = dice.Grow(1, 2); count > 0 && strips.Length > 0; count--)
        {
            var run = Run(dice.Pick(strips), width);
            if (Take(run))
            {
                found.Add(run);
            }
        }

        return found.ToValueList();
    }

    private PointRange? Pin(int width)
    {
        var cabled = rig.Rig.Cables.Where(cable => cable.To.Width >= width && IsFed(rig.Group(cable.From)!)).Select(cable => cable.To).ToArray();
        if (cabled.Length > 0 && dice.Chance(30))
        {
            var input = dice.Pick(cabled);
            var first = input.First + (2 * dice.Roll(0, (input.Width - width) / 2));
            var at = new PointRange(input.Device, input.Group, first, first + width - 1);
            return Take(at) ? at : null;
        }

        var outputs = Wide(width, PortKind.Output).Where(IsFed).ToArray();
        return outputs.Length > 0 && Run(dice.Pick(outputs), width) is var run && Take(run) ? run : null;
    }

    /// <summary>True for outputs that buses or the network can be routed to.</summary>
    private static bool IsFed(GroupView output) =>
        output.Profile.Routing.Any(entry =>
            entry.To == output.Group.Id && output.Profile.PortGroups.Any(group => group.Id == entry.From && group.Kind is PortKind.Receive or PortKind.Source)
        );

    private GroupView[] Wide(int width, PortKind kind) => [.. rig.OfKind(kind).Where(group => group.Count >= width)];

    private Id<Device> AnyDevice() =>
        dice.Chance(70) && rig.OfKind(PortKind.Output, PortKind.Input).ToArray() is { Length: > 0 } sockets
            ? dice.Pick(sockets).Device.Id
            : dice.Pick(rig.Rig.Devices).Id;

    /// <summary>A run that starts on an odd number when it is a pair.</summary>
    private PointRange Run(GroupView group, int width) => width == 1 ? group.Somewhere(dice, 1) : group.Range((2 * dice.Roll(0, (group.Count / 2) - 1)) + 1, 2);

    private bool Take(PointRange run)
    {
        var points = Enumerable.Range(0, run.Width).Select(position => run[position]).ToArray();
        if (points.Any(pinned.Contains))
        {
            return false;
        }

        pinned.UnionWith(points);
        return true;
    }
}
