using RoutingRules.Model;

namespace RoutingRules.Profiles;

/// <summary>Network jacks that are one switch.</summary>
public sealed record BridgedJacks
{
    /// <summary>The numbers of the jacks.</summary>
    public required NumberRange Jacks { get; init; }
}
