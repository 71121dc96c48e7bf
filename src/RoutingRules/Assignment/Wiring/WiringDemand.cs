using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>A delivery over the network as the wiring sees it.</summary>
/// <param name="Delivery">What has to arrive where.</param>
/// <param name="IsKept">True when it belongs to a demand that stays where it was, so that changes under it count.</param>
internal readonly record struct WiringDemand(Delivery Delivery, bool IsKept);
