using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>A demand that two assignments place differently.</summary>
public sealed record MovedDemand
{
    /// <summary>The demand.</summary>
    public required string Demand { get; init; }

    /// <summary>Its place in the first; null when it has none.</summary>
    public required PointRange? From { get; init; }

    /// <summary>Its place in the second; null when it has none.</summary>
    public required PointRange? To { get; init; }

    /// <summary>True when it is held where it is in the first.</summary>
    public bool IsHeld { get; init; }
}
