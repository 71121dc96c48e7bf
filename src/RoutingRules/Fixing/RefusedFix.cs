using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>A fix that was tried and not taken.</summary>
public sealed record RefusedFix
{
    /// <summary>The finding it was for.</summary>
    public required Finding Finding { get; init; }

    /// <summary>What it would have done.</summary>
    public required string Title { get; init; }

    /// <summary>Why it was not taken, in words.</summary>
    public required string Reason { get; init; }
}
