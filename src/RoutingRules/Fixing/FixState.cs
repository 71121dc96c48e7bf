using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>A state of a show while it is being mended.</summary>
internal sealed record FixState(ResolvedShow Show, CheckResult Check);
