using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Makes the list of demands with the points that may serve each.</summary>
internal sealed class DemandList
{
    private readonly RigFacts rig;
    private readonly PatchTrace before;
    private readonly List<DemandFacts> demands = [];
    private readonly Dictionary<string, (RunSet Runs, RunSet Even)> known = new(StringComparer.Ordinal);

    private DemandList(RigFacts rig, PatchTrace before)
    {
        this.rig = rig;
        this.before = before;
    }

    /// <summary>The demands of a show in demand order: feeds entry by entry, then lines.</summary>
    /// <param name="show">The show.</param>
    /// <param name="rig">Its rig.</param>
    /// <param name="before">Its patch, by which what is pinned behind a processor is followed to where it comes from.</param>
    public static List<DemandFacts> Of(Show show, RigFacts rig, PatchTrace before)
    {
        var list = new DemandList(rig, before);
        foreach (var feed in show.Feeds)
        {
            for (var entry = 0; entry < feed.To.Count; entry++)
                list.AddFeed(feed, entry);
        }

        foreach (var line in show.Lines)
            list.AddLine(line);

        return list.demands;
    }

    private void AddFeed(Feed feed, int entry)
    {
        var to = feed.To[entry];
        var (runs, even) = to.At is { } at
            ? (new RunSet(Placed(at) is { } run && run.Width == feed.Source.Width ? [run] : []), RunSet.Empty)
            : Runs($"feed {to.Devices}{to.Zones}", feed.Source.Width, () => Outputs(to));
        demands.Add(
            new DemandFacts
            {
                Key = $"{feed.Id}/{entry + 1}",
                Index = demands.Count,
                Feed = feed,
                Entry = entry,
                Width = feed.Source.Width,
                IsPinned = to.At is not null,
                Runs = runs,
                EvenRuns = even,
            }
        );
    }

    private void AddLine(Line line)
    {
        var from = line.From;
        var isPinned = from.Source is not null || !from.At.IsEmpty;
        var pins = from.Source is { } source ? [source] : from.At.ToList();
        var (runs, even) = isPinned
            ? (new RunSet(pins.Where(run => run.Width == line.Width && rig.Exists(run)).Distinct().ToList()), RunSet.Empty)
            : Runs($"line {line.Kind} {line.Phantom} {from.Devices}{from.Zones}", line.Width, () => Inputs(line));
        demands.Add(
            new DemandFacts
            {
                Key = line.Id.Value,
                Index = demands.Count,
                Line = line,
                Width = line.Width,
                IsPinned = isPinned,
                Runs = runs,
                EvenRuns = even,
            }
        );
    }

    // Many demands ask for the same places; they share one list.
    private (RunSet Runs, RunSet Even) Runs(string key, int width, Func<List<Point>> points)
    {
        key = $"{width} {key}";
        if (!known.TryGetValue(key, out var sets))
        {
            List<PointRange> runs = [];
            List<PointRange> even = [];
            Split(points(), width, runs, even);
            known.Add(key, sets = (new RunSet(runs), new RunSet(even)));
        }

        return sets;
    }

    /// <summary>Where a pinned sink is served: followed up cables, and through devices as they are patched, to the output that feeds it.</summary>
    private PointRange? Placed(PointRange sink)
    {
        var first = Placed(sink[0]);
        for (var i = 0; i < sink.Width; i++)
        {
            if (
                first is not { } start
                || Placed(sink[i]) is not { } point
                || point.Device != start.Device
                || point.Group != start.Group
                || point.Number != start.Number + i
            )
                return null;
        }

        return first is { } point0 ? new PointRange(point0.Device, point0.Group, point0.Number, point0.Number + sink.Width - 1) : null;
    }

    private Point? Placed(Point point)
    {
        // A chain of cables and processors may run in a circle.
        var passed = new HashSet<Point>();
        for (var hasEntered = true; rig.Group(point) is { } group && rig.Exists(point) && passed.Add(point); )
        {
            if (hasEntered && TakesSignal(group))
                return point;

            if (before.Upstream(point) is not { } step || (step.Kind != StepKind.Cable && step.From.Device != point.Device))
                return null;

            hasEntered = step.Kind == StepKind.Cable;
            point = step.From;
        }

        return null;
    }

    // A selector's output or a stage input has no place on it for a feed, whatever is patched.
    private static bool TakesSignal(GroupFacts group) =>
        group.Kind is PortKind.Receive or PortKind.Transmit
        || (
            group.Kind is PortKind.Output or PortKind.Sink
            && group.Device.Profile!.Routing.Any(entry =>
                entry.To == group.Model.Id
                && group.Device.Group(entry.From) is { } from
                && (from.Kind == PortKind.Receive || (from.Kind == PortKind.Source && from.ThroughFrom is null))
            )
        );

    private List<Point> Outputs(Destination to)
    {
        var points = new HashSet<Point>();
        foreach (var device in rig.Devices)
        {
            var isNamed = to.Devices.Contains(device.Model.Id);
            if (!isNamed && (device.Model.Zone is not { } zone || !to.Zones.Contains(zone)))
                continue;

            var groups = device.Groups.Where(IsLineOutput).ToList();
            foreach (var group in groups)
                points.UnionWith(All(group).Where(point => !LeadsToRack(point)));

            if (groups.Count == 0 && isNamed)
                points.UnionWith(CabledTo(device).Where(output => IsLineOutput(rig.Group(output)!) && (IsRack(device) || !LeadsToRack(output))));
        }

        return Ordered(points);
    }

    // Such an output is chosen by the name of the rack, never by that of anything else.
    private bool LeadsToRack(Point output) => rig.InputsCabledTo(output).Any(input => IsRack(rig.Device(input.Device)!));

    private static bool IsRack(DeviceFacts device) => device.IsKind(DeviceKind.TransmitterRack);

    private List<Point> Inputs(Line line)
    {
        var points = new HashSet<Point>();
        foreach (var device in rig.Devices)
        {
            if (!line.From.Devices.Contains(device.Model.Id) && (device.Model.Zone is not { } zone || !line.From.Zones.Contains(zone)))
                continue;

            foreach (var group in device.Groups.Where(group => Suits(line, group)))
                points.UnionWith(All(group).Where(point => rig.OutputCabledTo(point) is null));
        }

        return Ordered(points);
    }

    private static bool Suits(Line line, GroupFacts group) =>
        group.Kind == PortKind.Input
        && (group.Model.Level is null || group.Model.Level == SignalLevel.Mic || (line.Kind == LineKind.Line && group.Model.Level == SignalLevel.Line))
        && (line.Phantom != PhantomNeed.Required || group.Model.Phantom);

    // An output behind processing is no place of its own: what it carries was decided at the input.
    private static bool IsLineOutput(GroupFacts group) =>
        group.Kind == PortKind.Output && (group.Model.Level is null || group.Model.Level == SignalLevel.Line) && group.ThroughFrom is null;

    private static IEnumerable<Point> All(GroupFacts group) => Enumerable.Range(1, group.Count).Select(group.At);

    private IEnumerable<Point> CabledTo(DeviceFacts device) =>
        device.Groups.Where(group => group.Kind == PortKind.Input).SelectMany(All).Select(rig.OutputCabledTo).OfType<Point>();

    private List<Point> Ordered(HashSet<Point> points)
    {
        var list = points.ToList();
        list.Sort(rig.Compare);
        return list;
    }

    private static void Split(List<Point> points, int width, List<PointRange> runs, List<PointRange> even)
    {
        for (var i = 0; i + width <= points.Count; i++)
        {
            var (first, last) = (points[i], points[i + width - 1]);
            if (first.Device != last.Device || first.Group != last.Group || last.Number - first.Number != width - 1)
                continue;

            var run = new PointRange(first.Device, first.Group, first.Number, last.Number);
            (width == 1 || first.Number % 2 == 1 ? runs : even).Add(run);
        }
    }
}
