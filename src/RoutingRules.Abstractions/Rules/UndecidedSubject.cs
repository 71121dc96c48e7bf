namespace RoutingRules.Rules;

/// <summary>A subject about which a rule could not decide, with the reason.</summary>
public sealed record UndecidedSubject
{
    /// <summary>The rule id.</summary>
    public required string Rule { get; init; }

    /// <summary>The subject, as a person would call it.</summary>
    public required string Subject { get; init; }

    /// <summary>Why: missing data, a used-up budget, or a fault of the rule.</summary>
    public required string Reason { get; init; }

    /// <summary>True when the rule itself failed.</summary>
    public bool IsFault { get; init; }
}
