using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>The best assignment found in which one demand must not have its place.</summary>
public sealed record RunnerUp
{
    /// <summary>Where the demand would be; null when nowhere.</summary>
    public required PointRange? At { get; init; }

    /// <summary>How good that would be.</summary>
    public required ObjectiveVector Objective { get; init; }

    /// <summary>True when nothing better exists without the place; false when the search ended early and there may be something better.</summary>
    public bool IsProven { get; init; }

    /// <summary>The first number in which it differs; null when it is just as good.</summary>
    public required ObjectiveDifference? Difference { get; init; }

    /// <summary>Which other demands would be elsewhere, in demand order.</summary>
    public ValueList<MovedDemand> Moves { get; init; }
}
