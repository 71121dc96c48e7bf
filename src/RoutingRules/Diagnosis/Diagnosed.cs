using RoutingRules.Model;

namespace RoutingRules.Diagnosis;

/// <summary>The causes that were found, and the units of work that it took.</summary>
internal sealed record Diagnosed(ValueList<Cause> Causes, long Work);
