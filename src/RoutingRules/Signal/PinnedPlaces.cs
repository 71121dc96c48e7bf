using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Signal;

/// <summary>Finds where it is decided what a pinned place carries.</summary>
internal sealed class PinnedPlaces(SignalGraph graph)
{
    /// <summary>Where a pinned run is decided: itself when the network or a bus can feed it, else the outputs cabled to its device that lead to it.</summary>
    public PointIndex PlacedRun(PointIndex first, int width)
    {
        var placed = PlacedPoint(first);
        for (var position = 1; position < width && !placed.IsNone; position++)
        {
            var next = PlacedPoint(first + position);
            if (next != placed + position || graph.GroupOf(next) != graph.GroupOf(placed) || graph.DeviceOf(next) != graph.DeviceOf(placed))
            {
                return PointIndex.None;
            }
        }

        return placed;
    }

    private PointIndex PlacedPoint(PointIndex point)
    {
        // Null at the points where the way enters a device.
        DeviceNode? device = null;
        foreach (var passed in graph.Upward(point))
        {
            if (device is null && IsDecidedHere(passed))
            {
                return passed;
            }

            device ??= graph.DeviceOf(passed);
            if (graph.DeviceOf(passed) != device)
            {
                return PointIndex.None;
            }

            device = graph.Via(passed) == HopKind.Cable ? null : device;
        }

        return PointIndex.None;
    }

    private bool IsDecidedHere(PointIndex point)
    {
        var device = graph.DeviceOf(point);
        var group = SignalGraph.GroupOf(device, point);
        if (group.Kind is PortKind.Receive or PortKind.Transmit)
        {
            return true;
        }

        foreach (var from in device.Groups)
        {
            if (device.Type.RoutingBetween(from, group) is not null && (from.Kind == PortKind.Receive || (from.Kind == PortKind.Source && from.IsOrigin)))
            {
                return true;
            }
        }

        return false;
    }
}
