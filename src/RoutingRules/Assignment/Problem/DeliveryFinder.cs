using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>Finds the deliveries that devices, routing and networks allow at all, each by itself.</summary>
internal sealed class DeliveryFinder(AssignmentProblem problem)
{
    private readonly SignalGraph graph = problem.Show.Graph;

    /// <summary>True when a point of a run is excluded by the options.</summary>
    public bool IsExcluded(PointIndex run, int width)
    {
        var excluded = false;
        for (var position = 0; position < width; position++)
        {
            excluded |= problem.IsExcludedPoint[run.Value + position];
        }

        return excluded;
    }

    /// <summary>The runs that carry the line without any patch: its own points and what cables, paths through devices and fixed routing lead to.</summary>
    public List<int> Carriers(PointIndex[] points, int width)
    {
        var carriers = new List<int>();
        foreach (var point in points)
        {
            carriers.Add(point.Value);
        }

        for (var i = 0; i < carriers.Count; i++)
        {
            foreach (var next in graph.Fed(new PointIndex(carriers[i])))
            {
                var isStraight = true;
                for (var position = 0; position < width; position++)
                {
                    isStraight &=
                        next + position < graph.PointCount
                        && !problem.IsExcludedPoint[next + position]
                        && graph.Upstreams[next + position] == carriers[i] + position
                        && (
                            graph.Hops[next + position] is HopKind.Cable or HopKind.Through
                            || (graph.Hops[next + position] is HopKind.Fixed && !graph.IsClearable(new PointIndex(next + position)))
                        );
                }

                if (isStraight && !carriers.Contains(next))
                {
                    carriers.Add(next);
                }
            }
        }

        return carriers;
    }

    /// <summary>
    /// For a run that is served in the input on a way the assignment would not find, through an insert for instance: the delivery that keeps it,
    /// from the last point before the stream or before the sink. Null when the way is plain or holds a cable or more than one stream.
    /// </summary>
    public Delivery? AsIs(int source, int sink, int width)
    {
        var last = LastBefore(source, sink);
        for (var position = 1; position < width; position++)
        {
            last = LastBefore(source + position, sink + position) == last + position ? last : -1;
        }

        return last < 0 || last == source || (width > 1 && graph.GroupOf(new PointIndex(last)) != graph.GroupOf(new PointIndex(last + width - 1)))
            ? null
            : Of(last, sink, width);
    }

    /// <summary>
    /// The point that is routed to the transmit slot of the only stream on the way to a sink, or without a stream to the sink; -1 when there is none.
    /// </summary>
    private int LastBefore(int source, int sink)
    {
        var upstream = graph.Upstreams;
        var last = -1;
        var streams = 0;
        foreach (var point in graph.Upward(new PointIndex(sink)))
        {
            if (point.Value == source)
            {
                return streams > 1 ? -1
                    : streams == 1 ? last
                    : upstream[sink];
            }

            if (graph.Via(point) == HopKind.Cable)
            {
                return -1;
            }

            if (graph.Via(point) is HopKind.Stream or HopKind.Carrier)
            {
                last = upstream[upstream[point.Value]];
                streams++;
            }
        }

        return -1;
    }

    /// <summary>The delivery from a source run to a sink run when devices, routing and network allow it at all.</summary>
    public Delivery? Of(int source, int sink, int width)
    {
        var sender = graph.DeviceOf(new PointIndex(source)).Index;
        var receiver = graph.DeviceOf(new PointIndex(sink)).Index;
        if (problem.IsExcluded[sender] || problem.IsExcluded[receiver] || IsExcluded(new PointIndex(sink), width))
        {
            return null;
        }

        var delivery = new Delivery(source, sink, width, sender, receiver);
        for (var position = 0; position < width; position++)
        {
            if (delivery.IsLocal ? !IsRoutable(source + position, sink + position) : !IsReachable(source + position, sink + position, sender, receiver))
            {
                return null;
            }
        }

        return delivery;
    }

    private bool IsRoutable(int source, int sink)
    {
        if (source == sink)
        {
            return true;
        }

        if (graph.FixedSource(new PointIndex(sink)) is { } always)
        {
            return always.Value == source;
        }

        return graph.RoutingBetween(new PointIndex(source), new PointIndex(sink)) is { Mode: RoutingMode.Free }
            || problem.Blocks.Find(source, sink) is { Size: 1 };
    }

    private bool IsReachable(int source, int sink, int sender, int receiver)
    {
        var toStream = false;
        var toCarrier = false;
        foreach (var block in problem.ReceiveBlocks)
        {
            if (block.Device != receiver || !Receives(block, sink))
            {
                continue;
            }

            toStream |= !block.IsCarrier;
            toCarrier |=
                block.IsCarrier && problem.TransmitBlocks[block.CarrierFrom].Device == sender && Sends(problem.TransmitBlocks[block.CarrierFrom], source);
        }

        if (toCarrier)
        {
            return true;
        }

        if (!toStream || problem.NetworkFrom(sender, receiver) < 0)
        {
            return false;
        }

        foreach (var block in problem.TransmitBlocks)
        {
            if (block.Device == sender && !block.IsCarrier && Sends(block, source))
            {
                return true;
            }
        }

        return false;
    }

    private bool Receives(ReceiveBlock block, int sink)
    {
        if (sink >= block.First && sink < block.First + block.Width)
        {
            return true;
        }

        if (graph.FixedSource(new PointIndex(sink)) is { } always)
        {
            return always.Value >= block.First && always.Value < block.First + block.Width && !problem.IsBarred[always.Value];
        }

        return (
                graph.RoutingBetween(new PointIndex(block.First), new PointIndex(sink)) is { Mode: RoutingMode.Free }
                && problem.IsBarred.AsSpan(block.First, block.Width).Contains(false)
            ) || (problem.Blocks.ReceiveSlot(sink) is >= 0 and var slot && slot >= block.First && slot < block.First + block.Width && !problem.IsBarred[slot]);
    }

    private bool Sends(TransmitBlock block, int source)
    {
        for (var slot = block.First; slot < block.First + block.Width; slot++)
        {
            if (
                !problem.IsBarred[slot]
                && (
                    slot == source
                    || (
                        graph.FixedSource(new PointIndex(slot)) is { } always
                            ? always.Value == source
                            : graph.RoutingBetween(new PointIndex(source), new PointIndex(slot)) is { Mode: RoutingMode.Free }
                                || problem.Blocks.Find(source, slot) is not null
                    )
                )
            )
            {
                return true;
            }
        }

        return false;
    }
}
