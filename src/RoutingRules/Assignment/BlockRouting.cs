using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>Block routing inside a device as an assignment uses it: whole blocks, each sink from the source of its own number.</summary>
/// <remarks>IS-08 block routing allows more (other offsets); equal numbers satisfy it whether or not the device can reorder.</remarks>
internal static class BlockRouting
{
    /// <summary>The sinks that are routed together with a sink, and the first source; null when the pair is not routed in blocks at equal numbers.</summary>
    public static (int FirstSink, int FirstSource, int Size)? Find(SignalGraph graph, int source, int sink)
    {
        if (graph.RoutingBetween(new PointIndex(source), new PointIndex(sink)) is not { Mode: RoutingMode.Block } entry)
        {
            return null;
        }

        var number = graph.NumberOf(new PointIndex(sink));
        var size = entry.BlockSize ?? 1;
        var first = (number - 1) / size * size;
        var least = Math.Min(graph.GroupOf(new PointIndex(source)).Count, graph.GroupOf(new PointIndex(sink)).Count);
        return graph.NumberOf(new PointIndex(source)) == number && first + size <= least
            ? (sink - (number - 1 - first), source - (number - 1 - first), size)
            : null;
    }

    /// <summary>The receive slot that feeds a sink by block routing; -1 when none does.</summary>
    public static int ReceiveSlot(SignalGraph graph, int sink)
    {
        var device = graph.DeviceOf(new PointIndex(sink));
        var number = graph.NumberOf(new PointIndex(sink));
        foreach (var group in device.Groups)
        {
            if (group.Kind == PortKind.Receive && number <= group.Count && Find(graph, device.First(group).Value + number - 1, sink) is not null)
            {
                return device.First(group).Value + number - 1;
            }
        }

        return -1;
    }
}
