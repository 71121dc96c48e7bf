namespace RoutingRules.Assignment.Problem;

/// <summary>One way to place a demand: a run of points and, for a line, which of its sinks it reaches from where.</summary>
internal sealed class Candidate
{
    /// <summary>First point of the run.</summary>
    public required int First { get; init; }

    /// <summary>Position of the run's device.</summary>
    public required int Device { get; init; }

    /// <summary>Number of the run's port group among all port groups of the rig.</summary>
    public required int PortGroup { get; init; }

    /// <summary>Number of the first point in its group.</summary>
    public required int Number { get; init; }

    /// <summary>True when the demand is served at this run in the input.</summary>
    public required bool IsExisting { get; init; }

    /// <summary>True when a new, unpinned demand would take an output here, so that spares must stay free.</summary>
    public required bool AsksForSpares { get; init; }

    /// <summary>Points nobody else may use: the run, and for a line its split points and the sinks it reaches.</summary>
    public required int[] Claims { get; init; }

    public required Delivery[] Deliveries { get; init; }

    /// <summary>How many entries of a line's <c>to</c> it does not reach.</summary>
    public required int Failed { get; init; }
}
