using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>A feed entry or line that a plan brings back.</summary>
public sealed record RecoveredDemand
{
    /// <summary>The demand.</summary>
    public required string Demand { get; init; }

    /// <summary>Where it was plugged.</summary>
    public required PointRange From { get; init; }

    /// <summary>Where it is plugged after the plan; the same as before when only streams and routes change.</summary>
    public required PointRange To { get; init; }
}
