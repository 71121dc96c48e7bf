using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Checking.Facts.Documents;

/// <summary>An address of a show that does not resolve.</summary>
/// <param name="At">The address.</param>
/// <param name="State">What is wrong with it.</param>
/// <param name="Place">Where it is written.</param>
internal readonly record struct BrokenAddress(PointRange At, ConnectionState State, Place Place);
