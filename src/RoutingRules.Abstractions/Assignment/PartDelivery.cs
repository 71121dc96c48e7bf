using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>A source run that has to arrive at a sink run of the same width.</summary>
/// <param name="Source">First source point.</param>
/// <param name="Sink">First sink point.</param>
/// <param name="Width">1 or 2 points; two come in one stream.</param>
/// <param name="Sender">Position of the source's device.</param>
/// <param name="Receiver">Position of the sink's device.</param>
public readonly record struct PartDelivery(PointIndex Source, PointIndex Sink, int Width, int Sender, int Receiver)
{
    /// <summary>True for a route inside one device, which needs no stream.</summary>
    public bool IsLocal => Sender == Receiver;
}
