using RoutingRules.Profiles;

namespace RoutingRules.Resolving;

/// <summary>What stands on either side of a selector. Its output is a source of its own in the graph, but what it may give out is that of its legs.</summary>
internal static class Selectors
{
    /// <summary>The points that may be heard at the output of a selector, one for each leg, in profile order; none for any other point.</summary>
    public static IReadOnlyList<PointIndex> Legs(SignalGraph graph, PointIndex output) => Beside(graph, output, static entry => (entry.To, entry.From));

    /// <summary>The outputs at which a leg of a selector may be heard, in profile order; none for any other point.</summary>
    public static IReadOnlyList<PointIndex> Outputs(SignalGraph graph, PointIndex leg) => Beside(graph, leg, static entry => (entry.From, entry.To));

    private static IReadOnlyList<PointIndex> Beside(
        SignalGraph graph,
        PointIndex point,
        Func<ThroughEntry, (Model.Id<PortGroup> Here, Model.Id<PortGroup> There)> sides
    )
    {
        var device = graph.DeviceOf(point);
        if (device.Profile.Through.Count == 0)
        {
            return [];
        }

        var own = SignalGraph.GroupOf(device, point);
        var position = point.Value - device.First(own).Value;
        List<PointIndex>? found = null;
        foreach (var entry in device.Profile.Through)
        {
            var (here, there) = sides(entry);
            if (entry.Kind == ThroughKind.Select && own.Id == here && device.Group(there) is { } group && position < group.Count)
            {
                (found ??= []).Add(device.First(group) + position);
            }
        }

        return found ?? (IReadOnlyList<PointIndex>)[];
    }
}
