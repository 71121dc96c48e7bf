using RoutingRules.Model;

namespace RoutingRules.Assignment.Problem;

/// <summary>A demand to stay apart from.</summary>
/// <param name="Other">Position of the other demand in demand order.</param>
/// <param name="By">What the two must not share.</param>
internal readonly record struct Separate(int Other, SeparationBy By);
