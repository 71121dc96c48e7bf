namespace RoutingRules.Rules;

/// <summary>How one rule ended on a document.</summary>
public sealed record RuleOutcome
{
    /// <summary>The rule.</summary>
    public required RuleDescriptor Descriptor { get; init; }

    /// <summary>How it ended.</summary>
    public required RuleStatus Status { get; init; }

    /// <summary>How many subjects it looked at.</summary>
    public required int Subjects { get; init; }

    /// <summary>Units of work it used.</summary>
    public required long WorkUnits { get; init; }
}
