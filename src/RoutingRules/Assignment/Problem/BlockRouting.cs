using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>
/// Block routing inside devices as an assignment uses it: whole blocks, each from where it comes in the input, else from the source of its own
/// number.
/// </summary>
/// <remarks>
/// IS-08 block routing allows more (other offsets), see <see cref="UntriedRoutes"/>; equal numbers satisfy it whether or not the device can reorder.
/// </remarks>
internal sealed class BlockRouting
{
    private readonly SignalGraph graph;

    /// <summary>By how much sources lie after their sinks, by first sink of a block and group of sources; 0 for all others.</summary>
    private readonly Dictionary<(int FirstSink, Id<PortGroup> From), int> distances = [];

    /// <summary>Blocks of the input that are cut short because sinks or sources end, by first sink and group of sources.</summary>
    private readonly Dictionary<(int FirstSink, Id<PortGroup> From), int> cutShort = [];

    public BlockRouting(ResolvedShow show)
    {
        graph = show.Graph;
        foreach (var device in show.Devices)
        {
            foreach (var entry in device.Profile.Routing)
            {
                if (
                    entry.Mode == RoutingMode.Block
                    && device.Groups.FirstOrDefault(group => group.Id == entry.To) is { } to
                    && device.Groups.FirstOrDefault(group => group.Id == entry.From) is { } from
                )
                {
                    Note(device, entry, device.First(from).Value, from.Count, device.First(to).Value, to.Count);
                }
            }
        }
    }

    /// <summary>
    /// The sinks that are routed together with a sink, and the first source; null when the pair is not routed in blocks, or not so. Where fewer sinks than
    /// a block has take something, the others take nothing.
    /// </summary>
    public (int FirstSink, int FirstSource, int Size)? Find(int source, int sink)
    {
        if (graph.RoutingBetween(new PointIndex(source), new PointIndex(sink)) is not { Mode: RoutingMode.Block } entry)
        {
            return null;
        }

        var size = entry.BlockSize ?? 1;
        var within = (graph.NumberOf(new PointIndex(sink)) - 1) % size;
        var distance = Distance(sink - within, entry.From);
        var first = graph.NumberOf(new PointIndex(sink)) - 1 - within;
        var width = cutShort.GetValueOrDefault((sink - within, entry.From), size);
        return
            graph.NumberOf(new PointIndex(source)) - 1 == first + within + distance
            && first + distance >= 0
            && within < width
            && first + distance + width <= graph.GroupOf(new PointIndex(source)).Count
            && first + width <= graph.GroupOf(new PointIndex(sink)).Count
            ? (sink - within, source - within, width)
            : null;
    }

    /// <summary>True when a block of the input is filled only in part.</summary>
    public bool LeavesSlotsEmpty => cutShort.Count > 0;

    /// <summary>True for a sink of a block whose sources end before it.</summary>
    public bool IsLeftEmpty(int sink, int firstSink, int firstSource)
    {
        var size =
            sink < graph.PointCount && graph.GroupOf(new PointIndex(sink)) == graph.GroupOf(new PointIndex(firstSink))
                ? graph.RoutingBetween(new PointIndex(firstSource), new PointIndex(firstSink))?.BlockSize ?? 1
                : 0;
        return sink < firstSink + size;
    }

    /// <summary>The receive slot that feeds a sink by block routing; -1 when none does.</summary>
    public int ReceiveSlot(int sink)
    {
        var device = graph.DeviceOf(new PointIndex(sink));
        var number = graph.NumberOf(new PointIndex(sink));
        foreach (var group in device.Groups)
        {
            if (
                group.Kind == PortKind.Receive
                && group.Count > 0
                && graph.RoutingBetween(device.First(group), new PointIndex(sink)) is { Mode: RoutingMode.Block } entry
            )
            {
                var from = number + Distance(sink - ((number - 1) % (entry.BlockSize ?? 1)), group.Id);
                if (from >= 1 && from <= group.Count && Find(device.First(group).Value + from - 1, sink) is not null)
                {
                    return device.First(group).Value + from - 1;
                }
            }
        }

        return -1;
    }

    private int Distance(int firstSink, Id<PortGroup> from) => distances.GetValueOrDefault((firstSink, from));

    /// <summary>Takes note of where blocks come from in the input; where a device has one distance for all blocks, it is that of the first one.</summary>
    private void Note(DeviceNode device, RoutingEntry entry, int firstSource, int sources, int firstSink, int sinks)
    {
        var size = entry.BlockSize ?? 1;
        var isSettled = false;
        for (var first = 0; first < sinks; first += size)
        {
            var source = graph.Upstreams[firstSink + first];
            if (
                source < firstSource
                || source >= firstSource + sources
                || graph.Hops[firstSink + first] is not (HopKind.Route or HopKind.Factory)
                || (source - firstSource) % size != 0
                || !Enumerable
                    .Range(1, Math.Min(size, sinks - first) - 1)
                    .All(i => graph.Upstreams[firstSink + first + i] == (source + i < firstSource + sources ? source + i : -1))
            )
            {
                continue;
            }

            var distance = source - firstSource - first;
            var width = Math.Min(Math.Min(size, sinks - first), firstSource + sources - source);
            if (width < size && (!isSettled || distances[(firstSink + first, entry.From)] == distance))
            {
                cutShort[(firstSink + first, entry.From)] = width;
            }

            if (entry.Reordering)
            {
                distances[(firstSink + first, entry.From)] = distance;
                continue;
            }

            for (var block = 0; block < sinks && !isSettled; block += size)
            {
                distances[(firstSink + block, entry.From)] = distance;
            }

            isSettled = true;
        }
    }
}
