using RoutingRules.Model;

namespace RoutingRules.Planning.LineChecks;

/// <summary>What a line check found at one connector, or at some in a row.</summary>
public sealed record LineCheckResult
{
    /// <summary>The connectors: inputs, outputs, or for marks any points.</summary>
    public required PointRange At { get; init; }

    /// <summary>What was found.</summary>
    public required LineCheckWord Word { get; init; }

    /// <summary>
    /// As many connectors on the other side of <see cref="LineCheckWord.Swapped"/> and <see cref="LineCheckWord.Moved"/>; null for the other words.
    /// </summary>
    public PointRange? Other { get; init; }

    /// <summary>What is wrong, or for whom they are kept; null when nobody said.</summary>
    public string? Reason { get; init; }

    /// <summary>The day it was found; null when nobody said.</summary>
    public DateOnly? Since { get; init; }
}
