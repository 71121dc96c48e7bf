namespace RoutingRules.Tracing;

/// <summary>A step of the tree of everything that a point feeds.</summary>
public sealed record TraceBranch
{
    /// <summary>How many steps it is away from the traced point, from 1.</summary>
    public required int Depth { get; init; }

    /// <summary>The step.</summary>
    public required TraceHop Hop { get; init; }

    /// <summary>True when nothing is fed from where the step ends, or when it has come back to the traced point.</summary>
    public required bool IsEnd { get; init; }
}
