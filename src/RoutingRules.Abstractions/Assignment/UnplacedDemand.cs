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

    /// <summary>
    /// Placed demands, in demand order, that cannot all have a place together with this one, though they can as soon as any one of them is left out.
    /// Empty when it cannot be placed even alone, or when this was not checked; <see cref="ConflictProof"/> tells which. Of pins that contradict,
    /// the other pins.
    /// </summary>
    public ValueList<string> Conflict { get; init; }

    /// <summary>How the conflict is known.</summary>
    public ConflictProof ConflictProof { get; init; }

    /// <summary>When the conflict is proven by counting: all the points that its demands and this one may use, fewer than they need; in point order.</summary>
    public ValueList<PointRange> ConflictPoints { get; init; }

    /// <summary>Single changes that would place it and leave nothing else out, each tried, at most three.</summary>
    public ValueList<Relaxation> Relaxations { get; init; }
}
