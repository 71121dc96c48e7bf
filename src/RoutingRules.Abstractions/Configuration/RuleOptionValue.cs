namespace RoutingRules.Configuration;

/// <summary>The value that a crew gives to an option of a rule.</summary>
public sealed record RuleOptionValue
{
    /// <summary>The name of the option, such as <c>maximumMilliseconds</c>.</summary>
    public required string Name { get; init; }

    /// <summary>The value, in the unit that the name says; the rule's descriptor gives its range.</summary>
    public required double Value { get; init; }
}
