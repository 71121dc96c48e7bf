using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>A feed entry that goes on after a loss and falls silent by a plan, as what takes its place matters more.</summary>
public sealed record DisplacedDemand
{
    /// <summary>The demand that gives up its place.</summary>
    public required string Demand { get; init; }

    /// <summary>Its place.</summary>
    public required PointRange At { get; init; }

    /// <summary>The demand that takes it, of higher priority.</summary>
    public required string By { get; init; }
}
