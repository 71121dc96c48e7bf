using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Planning.NewShows;

/// <summary>The feeds and lines of a starting show, their labels, and what each was asked for by.</summary>
internal sealed class StarterIntent
{
    private static readonly Id<PortGroup> Aux = new("aux");
    private static readonly Id<PortGroup> Main = new("main");
    private static readonly Id<PortGroup> Matrix = new("matrix");
    private static readonly Id<PortGroup> Channel = new("channel");

    private readonly StarterOptions options;
    private readonly StarterProfiles profiles;
    private readonly StarterRig rig;
    private readonly List<Feed> feeds = [];
    private readonly List<Line> lines = [];
    private readonly Dictionary<string, StarterPart> parts = [];
    private readonly Dictionary<string, string> labels = [];

    public StarterIntent(StarterOptions options, StarterProfiles profiles, StarterRig rig)
    {
        this.options = options;
        this.profiles = profiles;
        this.rig = rig;
        Shortage = AddMains() ?? AddSubs() ?? AddMixes() ?? AddLines() ?? BoxShortage();
    }

    /// <summary>The first thing that the consoles have not enough buses or channels for, or the boxes not enough connectors; found by counting alone.</summary>
    public (StarterPart Part, string Reason)? Shortage { get; }

    public ValueList<Feed> Feeds => feeds.ToValueList();

    public ValueList<Line> Lines => lines.ToValueList();

    /// <summary>What a demand belongs to: a line's id, or a feed's id with its entry.</summary>
    public StarterPart PartOf(string demand) => parts[demand.Split('/')[0]];

    /// <summary>What stands on the displays for a feed or line; pairs get L and R.</summary>
    public string Label(string id, int width, int position) =>
        labels[id]
        + (
            width == 2
                ? position == 0
                    ? "L"
                    : "R"
                : ""
        );

    private (StarterPart, string)? AddMains()
    {
        if (TooMany(options.Console, Main, options.Mains) is { } reason)
        {
            return (StarterPart.Mains, reason);
        }

        foreach (
            var (id, name, part) in options.Mains switch
            {
                0 => (ReadOnlySpan<(string, string, string?)>)[],
                1 => [("main", "Main", null)],
                2 => [("main-l", "Main L", "left"), ("main-r", "Main R", "right")],
                _ => [("main-l", "Main L", "left"), ("main-r", "Main R", "right"), ("main-c", "Main C", null)],
            }
        )
        {
            var side = part switch
            {
                "left" => StagePlace.StageRight,
                "right" => StagePlace.StageLeft,
                _ => (StagePlace?)null,
            };
            Add(
                StarterPart.Mains,
                name.ToUpperInvariant(),
                new Feed
                {
                    Id = new(id),
                    Name = name,
                    Role = FeedRole.Main,
                    Set = part is null ? null : "main",
                    Part = part,
                    Source = Run(rig.Desk, Main, feeds.Count + 1, 1),
                    To = [new Destination { Devices = Boxes(side) }],
                    Priority = Priority.Critical,
                }
            );
        }

        return null;
    }

    private (StarterPart, string)? AddSubs()
    {
        if (TooMany(options.Console, Matrix, options.Subs) is { } reason)
        {
            return (StarterPart.Subs, reason);
        }

        for (var i = 1; i <= options.Subs; i++)
        {
            Add(
                StarterPart.Subs,
                StarterLines.Numbered("SUB", i),
                new Feed
                {
                    Id = new(StarterLines.Numbered("sub", i, '-')),
                    Name = StarterLines.Numbered("Sub", i),
                    Role = FeedRole.Sub,
                    Source = Run(rig.Desk, Matrix, i, 1),
                    To = [new Destination { Devices = Boxes(null) }],
                    Priority = Priority.High,
                }
            );
        }

        return null;
    }

    private (StarterPart, string)? AddMixes()
    {
        var desk = rig.MonitorDesk ?? rig.Desk;
        var buses = profiles.Count(desk.Profile, Aux.Value, PortKind.Source);
        if (TooMany(desk.Profile, Aux, options.Monitors) is { } reason)
        {
            return (StarterPart.Monitors, reason);
        }

        if (options.Monitors + (2 * options.InEars) > buses)
        {
            return (
                StarterPart.InEars,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{desk.Profile} has {buses} buses 'aux': {options.Monitors} for monitors and {2 * options.InEars} for in-ear pairs are too many"
                )
            );
        }

        for (var i = 1; i <= options.Monitors; i++)
        {
            Add(
                StarterPart.Monitors,
                StarterLines.Numbered("MON", i),
                new Feed
                {
                    Id = new(StarterLines.Numbered("mon", i, '-')),
                    Name = StarterLines.Numbered("Monitor", i),
                    Role = FeedRole.Monitor,
                    Source = Run(desk, Aux, i, 1),
                    To = [new Destination { Devices = Boxes(null) }],
                }
            );
        }

        // Pairs begin at odd buses as long as there are enough.
        var first = options.Monitors + 1;
        first += first % 2 == 0 && first + (2 * options.InEars) <= buses ? 1 : 0;
        for (var i = 1; i <= options.InEars; i++, first += 2)
        {
            Add(
                StarterPart.InEars,
                StarterLines.Numbered("EAR", i) + " ",
                new Feed
                {
                    Id = new(StarterLines.Numbered("ears", i, '-')),
                    Name = StarterLines.Numbered("Ears", i),
                    Role = FeedRole.InEar,
                    Source = Run(desk, Aux, first, 2),
                    To = [new Destination { Devices = Boxes(null) }],
                    Priority = Priority.High,
                    Limiter = true,
                    Pack = i.ToString(CultureInfo.InvariantCulture),
                }
            );
        }

        return null;
    }

    private (StarterPart, string)? AddLines()
    {
        var desks = rig.MonitorDesk is { } second ? (Device[])[rig.Desk, second] : [rig.Desk];
        var narrow = desks.MinBy(desk => profiles.Count(desk.Profile, Channel.Value, PortKind.Sink))!;
        var channels = profiles.Count(narrow.Profile, Channel.Value, PortKind.Sink);
        var next = 1;
        foreach (
            var (part, count, width) in (ReadOnlySpan<(StarterPart, int, int)>)
                [
                    (StarterPart.Vocals, options.Vocals, 1),
                    (StarterPart.Microphones, options.Microphones, 1),
                    (StarterPart.PhantomLines, options.PhantomLines, 1),
                    (StarterPart.StereoLines, options.StereoLines, 2),
                ]
        )
        {
            if (next - 1 + (count * width) > channels)
            {
                return (
                    part,
                    string.Create(CultureInfo.InvariantCulture, $"{narrow.Profile} has {channels} channels, and lines that come first take {next - 1} of them")
                );
            }

            next += width == 2 && next % 2 == 0 && next + (2 * count) <= channels ? 1 : 0;
            for (var i = 1; i <= count; i++, next += width)
            {
                Add(part, StarterLines.Line(part, i, Boxes(null)) with { To = desks.Select(desk => Run(desk, Channel, next, width)).ToValueList() }, i);
            }
        }

        return null;
    }

    private (StarterPart, string)? BoxShortage() =>
        BoxShortage("output", PortKind.Output, feeds.Select(feed => (feed.Id.Value, feed.Source.Width)))
        ?? BoxShortage("input", PortKind.Input, lines.Select(line => (line.Id.Value, line.Width)));

    private (StarterPart, string)? BoxShortage(string what, PortKind kind, IEnumerable<(string Id, int Width)> demands)
    {
        var there = options.Boxes.Sum(box => profiles.Count(box.Profile, kind));
        var taken = 0;
        foreach (var (id, width) in demands)
        {
            taken += width;
            if (taken > there)
            {
                var boxes = options.Boxes.Count == 1 ? "the stage box has" : "the stage boxes have";
                return (
                    parts[id],
                    string.Create(CultureInfo.InvariantCulture, $"{boxes} {there} {what}s in all, and what comes before '{id}' takes {taken - width}")
                );
            }
        }

        return null;
    }

    private void Add(StarterPart part, string label, Feed feed)
    {
        feeds.Add(feed);
        parts.Add(feed.Id.Value, part);
        labels.Add(feed.Id.Value, label);
    }

    private void Add(StarterPart part, Line line, int number)
    {
        lines.Add(line);
        parts.Add(line.Id.Value, part);
        labels.Add(line.Id.Value, StarterLines.Label(part, number));
    }

    private string? TooMany(Id<DeviceProfile> profile, Id<PortGroup> group, int wanted)
    {
        var count = profiles.Count(profile, group.Value, PortKind.Source);
        return wanted <= count
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"{profile} has {(count == 0 ? "no" : count)} {(count == 1 ? "bus" : "buses")} '{group}'");
    }

    /// <summary>The boxes on a side, or all where there are none.</summary>
    private ValueList<Id<Device>> Boxes(StagePlace? side)
    {
        var there = rig.Boxes.Where((_, index) => rig.Places[index] == side).Select(box => box.Id).ToValueList();
        return there.IsEmpty ? rig.Boxes.Select(box => box.Id).ToValueList() : there;
    }

    private static PointRange Run(Device device, Id<PortGroup> group, int first, int width) => new(device.Id, group, first, first + width - 1);
}
