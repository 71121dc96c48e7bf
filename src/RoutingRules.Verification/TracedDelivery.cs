using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>One delivery that the result makes: a run of sinks that carries the run of sources it should.</summary>
internal sealed class TracedDelivery
{
    public required DemandFacts Demand { get; init; }

    /// <summary>Where it arrives.</summary>
    public required PointRange Sinks { get; init; }

    /// <summary>The transmit slots on the way; empty inside one device.</summary>
    public required IReadOnlyList<Point> Transmit { get; init; }

    /// <summary>The receive slots on the way, as many as transmit slots.</summary>
    public required IReadOnlyList<Point> Receive { get; init; }

    /// <summary>All points on the way.</summary>
    public required IReadOnlyList<Point> Points { get; init; }

    /// <summary>Position of the stream in the result; -1 for none.</summary>
    public required int Stream { get; init; }
}
