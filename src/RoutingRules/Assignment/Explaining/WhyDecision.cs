using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>One demand: its place, what speaks for it, and what speaks against every other.</summary>
public sealed record WhyDecision
{
    /// <summary>The demand.</summary>
    public required string Demand { get; init; }

    /// <summary>Its place; null when it has none.</summary>
    public required PointRange? At { get; init; }

    /// <summary>How it came to it.</summary>
    public required DecisionBasis Basis { get; init; }

    /// <summary>What people would see in the place, such as a wanted number that is met: sentences.</summary>
    public ValueList<string> Grounds { get; init; }

    /// <summary>The other places, those with the same cause together; empty for a pinned demand.</summary>
    public ValueList<Refusal> Refusals { get; init; }

    /// <summary>The best assignment found without its place; null for a pinned or unplaced demand, or when pins contradict.</summary>
    public RunnerUp? RunnerUp { get; init; }

    /// <summary>What of it finds no place, with the conflict and what would help: the demand itself, or sinks of a line.</summary>
    public ValueList<UnplacedDemand> Unplaced { get; init; }
}
