using RoutingRules.Fixing;

namespace RoutingRules.Diagnosis;

/// <summary>A repair of what one finding is about.</summary>
/// <param name="Title">The cause in words.</param>
/// <param name="Fix">The repair.</param>
internal sealed record OtherRepair(string Title, Fix Fix);
