using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Verification;

/// <summary>What an independent look at an assignment found.</summary>
public sealed record VerificationResult
{
    /// <summary>The 14 numbers counted from the patch alone; null when pins contradict. Meaningful only when <see cref="IsValid"/>.</summary>
    public required ObjectiveVector? Vector { get; init; }

    /// <summary>Every rule of the assignment that the result breaks, for a person, each naming the place; empty when there is none.</summary>
    public ValueList<string> Problems { get; init; }

    /// <summary>True when no rule is broken. Says nothing about whether something better exists.</summary>
    public bool IsValid => Problems.IsEmpty;
}
