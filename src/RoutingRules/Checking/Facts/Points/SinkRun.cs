using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>Neighbouring points of one group with one fault, and the points that go with them position by position.</summary>
/// <param name="Sink">First point.</param>
/// <param name="Source">First of the points that go with them; none when there are none.</param>
/// <param name="Width">How many.</param>
/// <param name="Tag">Which fault.</param>
/// <param name="Order">The lowest place in the document, of whatever list the rule counts.</param>
internal readonly record struct SinkRun(PointIndex Sink, PointIndex Source, int Width, int Tag, int Order);
