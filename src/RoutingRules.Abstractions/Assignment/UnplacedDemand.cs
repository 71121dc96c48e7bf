using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>A demand, or a delivery of a line, that could not be placed.</summary>
public sealed record UnplacedDemand
{
    /// <summary>The demand.</summary>
    public required string Demand { get; init; }

    /// <summary>The sink of a line that is not reached; null when the whole demand is unplaced.</summary>
    public PointRange? Sink { get; init; }

    /// <summary>Why, for a person, with what would help.</summary>
    public required string Reason { get; init; }
}
