using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Benchmarks;

/// <summary>A made-up show to assign.</summary>
/// <param name="Shape">What it looks like.</param>
/// <param name="Outputs">Outputs of all boxes.</param>
/// <param name="Seed">What everything in it is drawn from.</param>
/// <param name="Show">The show; nothing is patched.</param>
/// <param name="Options">What is asked for.</param>
public sealed record AssignInstance(AssignShape Shape, int Outputs, int Seed, Show Show, AssignmentOptions Options);
