namespace RoutingRules.Rules;

/// <summary>How one rule ended on a document.</summary>
public sealed record RuleOutcome
{
    /// <summary>The rule.</summary>
    public required RuleDescriptor Descriptor { get; init; }

    /// <summary>How it ended.</summary>
    public required RuleStatus Status { get; init; }

    /// <summary>How many things it looked at: its subjects, or what it said with <see cref="RuleContext.LookedAt"/>.</summary>
    public required int Subjects { get; init; }

    /// <summary>Units of work it used.</summary>
    public required long WorkUnits { get; init; }
}
