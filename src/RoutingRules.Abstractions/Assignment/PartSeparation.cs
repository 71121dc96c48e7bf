using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>A demand to stay apart from.</summary>
/// <param name="Other">Its position in <see cref="AssignmentPart.Demands"/>.</param>
/// <param name="By">What the two must not share.</param>
public readonly record struct PartSeparation(int Other, SeparationBy By);
