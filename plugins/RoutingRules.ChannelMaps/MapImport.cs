using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.ChannelMaps;

/// <summary>Puts a channel map into the patch of a show.</summary>
/// <remarks>
/// The map may hold a part of the channels; the others stay as they are. Routes are cut and written only where a sink takes something else, and none is
/// written where a factory route says the same. As IS-08 has it, the map is taken whole or not at all, and the whole is judged: whatever breaks a block
/// or an order of the device is refused (rules RR2005 and RR2006), unless the show did so before. A channel that takes what it took is not judged, so
/// that the map a device has can always be put back.
/// </remarks>
public static class MapImport
{
    /// <summary>Puts a map into a show.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ChannelMapException">The show has no such device, or its profile is not known.</exception>
    public static MapImportResult Apply(RoutingEngine engine, Show show, ChannelMap map)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(map);
        var resolved = engine.Resolve(show);
        var device = ChannelMap.Find(resolved, map.Device);
        var problems = new List<string>();
        var wanted = new SortedDictionary<PointIndex, PointIndex>();
        var moves = new List<MapMove>();
        foreach (var channel in map.Channels)
        {
            if (Problem(resolved.Graph, device, channel, out var sink, out var source) is { } problem)
            {
                problems.Add(problem);
            }
            else if (ChannelMap.Source(resolved.Graph, device, sink) is var now && now != source && wanted.TryAdd(sink, source))
            {
                moves.Add(new MapMove(resolved.Graph.Address(sink), Address(resolved.Graph, now), Address(resolved.Graph, source)));
            }
        }

        if (problems.Count > 0)
        {
            return new MapImportResult { Problems = problems.ToValueList() };
        }

        return MapJudgement.Of(engine, resolved, RouteChanges.Of(resolved, device, wanted), moves, finding => ChannelMap.IsAbout(finding, map.Device));
    }

    /// <summary>What stands against a channel that takes something else, or that the device does not have; null when nothing does.</summary>
    private static string? Problem(SignalGraph graph, DeviceNode device, MapChannel channel, out PointIndex sink, out PointIndex source)
    {
        sink = source = PointIndex.None;
        var place = $"Output '{channel.Output}', channel {FormattableString.Invariant($"{channel.Channel}")}";
        if (ChannelMap.Outputs(device).FirstOrDefault(group => group.Id == channel.Output) is not { } output)
        {
            return $"{place}: '{device.Id}' has no such output; there are {string.Join(", ", ChannelMap.Outputs(device).Select(group => group.Id))}.";
        }

        if (channel.Channel >= output.Count)
        {
            return FormattableString.Invariant($"{place}: the output has {output.Count} channels, numbered 0 to {output.Count - 1}.");
        }

        sink = device.First(output) + channel.Channel;
        var now = ChannelMap.Source(graph, device, sink);
        var isFixed = graph.FixedSource(sink);
        if (channel.Input.IsNone)
        {
            return now.IsNone ? null
                : isFixed is { IsNone: false } always && !graph.IsClearable(sink)
                    ? $"{place}: {graph.Address(sink)} always takes {graph.Address(always)} and cannot be silenced; leave the channel out of the map."
                : null;
        }

        if (!now.IsNone && graph.GroupOf(now).Id == channel.Input && graph.NumberOf(now) - 1 == channel.InputChannel)
        {
            source = now;
            return null;
        }

        if (ChannelMap.Inputs(device).FirstOrDefault(group => group.Id == channel.Input) is not { } input)
        {
            return $"{place}: '{device.Id}' has no input '{channel.Input}'; there are "
                + $"{string.Join(", ", ChannelMap.Inputs(device).Select(group => group.Id))}.";
        }

        if (channel.InputChannel >= input.Count)
        {
            return FormattableString.Invariant($"{place}: the input '{input.Id}' has {input.Count} channels, numbered 0 to {input.Count - 1}.");
        }

        source = device.First(input) + channel.InputChannel;
        return graph.RoutingBetween(source, sink) is null ? $"{place}: '{device.Id}' routes nothing from '{input.Id}' to '{output.Id}'; take another input."
            : isFixed is { } only && only != source
                ? $"{place}: {graph.Address(sink)} always takes {(only.IsNone ? "silence" : graph.Address(only))}; leave the channel out of the map."
            : null;
    }

    private static Point? Address(SignalGraph graph, PointIndex point) => point.IsNone ? null : graph.Address(point);
}
