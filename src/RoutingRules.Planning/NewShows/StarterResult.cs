using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Planning.NewShows;

/// <summary>A starting show, or why there is none.</summary>
public sealed record StarterResult
{
    /// <summary>The show; null when something does not fit.</summary>
    public Show? Show { get; init; }

    /// <summary>What the rules say about the patched show; null when something does not fit.</summary>
    public CheckResult? Check { get; init; }

    /// <summary>What does not fit; null when everything does.</summary>
    public StarterShortage? Shortage { get; init; }
}
