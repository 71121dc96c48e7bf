using RoutingRules.Model;

namespace RoutingRules.ChannelMaps;

/// <summary>A sink that takes something else.</summary>
/// <param name="At">The sink.</param>
/// <param name="Before">What it took; null for silence.</param>
/// <param name="After">What it takes; null for silence.</param>
public sealed record MapMove(Point At, Point? Before, Point? After);
