using RoutingRules.Resolving;

namespace RoutingRules.Signal.Graph;

/// <summary>What following a signal downstream asks: of a rule's context, which counts the work, or of a graph.</summary>
internal interface ISignalWalk
{
    /// <summary>The device of a point.</summary>
    DeviceNode DeviceOf(PointIndex point);

    /// <summary>The port group of a point.</summary>
    GroupNode GroupOf(PointIndex point);

    /// <summary>How the signal comes to a point.</summary>
    HopKind Via(PointIndex point);

    /// <summary>The points that a point feeds.</summary>
    ReadOnlySpan<int> Fed(PointIndex point);
}
