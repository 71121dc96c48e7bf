using RoutingRules.Model;

namespace RoutingRules.Tests.Assignment;

/// <summary>One way to place one demand.</summary>
/// <param name="At">The run; null when it is left out.</param>
/// <param name="Sinks">For a placed line the sinks it reaches.</param>
internal sealed record BruteForceChoice(PointRange? At, ValueList<PointRange> Sinks);
