namespace RoutingRules.Assignment.Problem;

/// <summary>A source run that has to arrive at a sink run of the same width, both given by graph points.</summary>
/// <param name="Source">First source point.</param>
/// <param name="Sink">First sink point.</param>
/// <param name="Width">1 or 2.</param>
/// <param name="Sender">Position of the source's device.</param>
/// <param name="Receiver">Position of the sink's device; equal to the sender for a route inside one device.</param>
internal readonly record struct Delivery(int Source, int Sink, int Width, int Sender, int Receiver)
{
    public bool IsLocal => Sender == Receiver;
}
