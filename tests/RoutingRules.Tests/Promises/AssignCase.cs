using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Tests.Promises;

/// <summary>A show with the options it is assigned with.</summary>
public sealed record AssignCase(Show Show, AssignmentOptions Options);
