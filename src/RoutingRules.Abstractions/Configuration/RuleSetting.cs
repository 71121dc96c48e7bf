using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Configuration;

/// <summary>What a crew says about one rule, or about all rules whose ids begin alike.</summary>
public sealed record RuleSetting
{
    /// <summary>The rule's id or name, such as <c>RR2003</c> or <c>output-orphaned</c>, or the beginning of ids with a star, such as <c>RR7*</c>.</summary>
    public required string Rule { get; init; }

    /// <summary>Whether it runs; null leaves it as it is.</summary>
    public bool? Enabled { get; init; }

    /// <summary>The severity of its findings; null leaves it as it is.</summary>
    public Severity? Severity { get; init; }

    /// <summary>Options that are set; those not named keep their values.</summary>
    public ValueList<RuleOptionValue> Options { get; init; }
}
