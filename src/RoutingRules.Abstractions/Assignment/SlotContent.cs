using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>What is settled about a transmit slot before anything is chosen.</summary>
/// <param name="IsSettled">True when the slot carries the same whatever is chosen.</param>
/// <param name="Content">What it then carries; <see cref="PointIndex.None"/> for nothing.</param>
/// <param name="IsForced">True when the device itself sees to that, so that nobody could leave it out.</param>
public readonly record struct SlotContent(bool IsSettled, PointIndex Content, bool IsForced);
