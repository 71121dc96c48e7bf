using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>A feed entry or line that a plan does not bring back, or not at every place.</summary>
public sealed record UnrecoveredDemand
{
    /// <summary>The demand.</summary>
    public required string Demand { get; init; }

    /// <summary>The sink of a line that stays silent, or what one of several cables of an output leads to; null when it is all of the demand.</summary>
    public PointRange? Sink { get; init; }

    /// <summary>Why, for a person.</summary>
    public required string Reason { get; init; }
}
