using RoutingRules.Resolving;

namespace RoutingRules.Signal.Graph;

/// <summary>Walks through a graph.</summary>
internal readonly record struct GraphWalk(SignalGraph Graph) : ISignalWalk
{
    /// <inheritdoc/>
    public DeviceNode DeviceOf(PointIndex point) => Graph.DeviceOf(point);

    /// <inheritdoc/>
    public GroupNode GroupOf(PointIndex point) => Graph.GroupOf(point);

    /// <inheritdoc/>
    public HopKind Via(PointIndex point) => Graph.Via(point);

    /// <inheritdoc/>
    public ReadOnlySpan<int> Fed(PointIndex point) => Graph.Fed(point);
}
