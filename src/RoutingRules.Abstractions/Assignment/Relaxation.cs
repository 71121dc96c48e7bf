using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>A single change after which an unplaced demand has a place and nothing else loses its own, found by assigning again.</summary>
public sealed record Relaxation
{
    /// <summary>What is changed.</summary>
    public required RelaxationKind Kind { get; init; }

    /// <summary>What the change is about; see <see cref="RelaxationKind"/>.</summary>
    public required string Subject { get; init; }

    /// <summary>Where the demand would be; for a sink of a line, the line's place.</summary>
    public required PointRange At { get; init; }

    /// <summary>How many other demands would then be at another place than now.</summary>
    public required int Moves { get; init; }
}
