using RoutingRules.Model;

namespace RoutingRules.Tests.Diagnosis;

/// <summary>A kind of slip: makes a show with one such slip from a clean one, or null where that has no place for it.</summary>
internal sealed record Fault(string Kind, Func<Show, Lot, Show?> Plant);
