using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>An output or a channel that carries another source than before.</summary>
/// <param name="At">The output or channel.</param>
/// <param name="Before">The source it carried; null for nothing.</param>
/// <param name="After">The source it carries now; null for nothing.</param>
public sealed record SinkMove(Point At, Point? Before, Point? After);
