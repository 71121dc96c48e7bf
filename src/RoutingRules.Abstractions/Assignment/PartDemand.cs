using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>A demand as a strategy sees it.</summary>
public sealed class PartDemand
{
    /// <summary>The demand in the show.</summary>
    public required DemandNode Node { get; init; }

    /// <summary>0 critical to 3 low: the number of the vector that counts it when it is left out.</summary>
    public required int Tier { get; init; }

    /// <summary>What leaving it out counts in its tier: 1 for a feed entry, the number of sinks for a line.</summary>
    public required int Weight { get; init; }

    /// <summary>True when it must be placed.</summary>
    public required bool IsFirm { get; init; }

    /// <summary>The wanted number, or 0.</summary>
    public required int Preferred { get; init; }

    /// <summary>Number of its set, or -1.</summary>
    public required int Set { get; init; }

    /// <summary>Number of its part of the set; equal parts are never compared.</summary>
    public required int Part { get; init; }

    /// <summary>Number of its group, feeds and lines apart, or -1.</summary>
    public required int Group { get; init; }

    /// <summary>Where it may be placed.</summary>
    public required IReadOnlyList<PartCandidate> Candidates { get; init; }

    /// <summary>Demands of the part it must stay apart from; each pair is listed at both.</summary>
    public required IReadOnlyList<PartSeparation> Separations { get; init; }
}
