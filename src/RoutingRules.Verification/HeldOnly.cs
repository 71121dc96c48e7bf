using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Strips a patch of all that given placements do not need.</summary>
internal static class HeldOnly
{
    /// <summary>The input with only what serves some placements, streams that must stay, and routes that nobody has to touch.</summary>
    /// <param name="facts">The input.</param>
    /// <param name="at">For each demand its run, null when it is to be left out.</param>
    public static Show Of(AssignmentFacts facts, IReadOnlyList<PointRange?> at)
    {
        var needed = new HashSet<Point>();
        foreach (var demand in facts.Demands)
        {
            if (at[demand.Index] is not { } run)
                continue;

            var ends = demand.Line is { } line ? line.To.Where(sink => demand.Occupies(run).Any(point => Passes(facts, sink, point))) : [run];
            needed.UnionWith(ends.SelectMany(end => Enumerable.Range(0, end.Width).SelectMany(i => facts.Before.Follow(end[i]).Points)));
        }

        var streams = facts
            .Input.Patch.Streams.Select(stream => facts.StayingStreams.Contains(stream) ? stream : Strip(facts, stream, needed))
            .OfType<AudioStream>()
            .ToList();
        var sent = streams
            .Where(stream => !facts.StayingStreams.Contains(stream))
            .SelectMany(stream => Enumerable.Range(0, stream.From.Width).Select(i => stream.From[i]))
            .ToHashSet();
        var routes = new List<Route>();
        foreach (var group in facts.Rig.Devices.SelectMany(device => device.Groups))
        {
            for (var number = 1; number <= group.Count; number++)
            {
                if (Wanted(facts, group.At(number), sent, needed) is { } route)
                    routes.Add(route);
            }
        }

        return facts.Input with
        {
            Patch = facts.Input.Patch with { Streams = streams.ToValueList(), Routes = routes.ToValueList() },
        };
    }

    private static bool Passes(AssignmentFacts facts, PointRange sink, Point point) =>
        facts.Rig.Exists(sink) && Enumerable.Range(0, sink.Width).Any(i => facts.Before.Follow(sink[i]).IndexOf(point) >= 0);

    private static AudioStream? Strip(AssignmentFacts facts, AudioStream stream, HashSet<Point> needed)
    {
        var receivers = stream.To.Where(receiver => Enumerable.Range(0, receiver.At.Width).Any(i => needed.Contains(receiver.At[i]))).ToList();
        return receivers.Count == 0 ? null : stream with { To = receivers.ToValueList() };
    }

    private static Route? Wanted(AssignmentFacts facts, Point sink, HashSet<Point> sent, HashSet<Point> needed)
    {
        var group = facts.Rig.Group(sink)!;
        var isNamed = facts.Before.IsRouted(sink, out var source);
        var route = isNamed ? new Route { From = source is { } from ? Run(from) : null, To = Run(sink) } : null;
        if (needed.Contains(sink) || group.IsRigid)
            return route;

        var isIdleSlot = group.Kind == PortKind.Transmit && sent.Contains(sink);
        var isIdleOutput = group.Kind == PortKind.Output && group.ThroughFrom is null && !facts.Before.Follow(sink).IsBuiltIn;
        return isIdleSlot || isIdleOutput ? new Route { To = Run(sink) } : route;
    }

    private static PointRange Run(Point point) => new(point.Device, point.Group, point.Number, point.Number);
}
