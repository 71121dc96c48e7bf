using RoutingRules.Fixing;

namespace RoutingRules.Diagnosis;

/// <summary>A repair of what one finding is about.</summary>
/// <param name="Title">The cause in words.</param>
/// <param name="Fix">The repair.</param>
/// <param name="IsAsLikely">True when it is as likely as the one before it: if both mend as much, a person has to choose.</param>
internal sealed record OtherRepair(string Title, Fix Fix, bool IsAsLikely = false);
