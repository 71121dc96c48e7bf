using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>One way to place a demand: a run of points and, for a line, which of its sinks it reaches from where.</summary>
public sealed class PartCandidate
{
    /// <summary>First point of the run.</summary>
    public required PointIndex First { get; init; }

    /// <summary>Position of the run's device.</summary>
    public required int Device { get; init; }

    /// <summary>Number of the run's port group among all port groups.</summary>
    public required int PortGroup { get; init; }

    /// <summary>Number of the first point in its group, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>True when the demand is served at this run in the input.</summary>
    public required bool IsExisting { get; init; }

    /// <summary>True when choosing it asks for spare outputs in its port group.</summary>
    public required bool AsksForSpares { get; init; }

    /// <summary>Points nobody else may use when it is chosen.</summary>
    public required IReadOnlyList<PointIndex> Claims { get; init; }

    /// <summary>What has to arrive where when it is chosen.</summary>
    public required IReadOnlyList<PartDelivery> Deliveries { get; init; }

    /// <summary>How many sinks of a line it does not reach.</summary>
    public required int Failed { get; init; }
}
