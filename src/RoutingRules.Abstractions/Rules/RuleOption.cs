namespace RoutingRules.Rules;

/// <summary>A number that a rule compares with and that a crew may set, because it is a matter of taste or of the rig.</summary>
/// <remarks>Made once by the rule, named in its descriptor, read through <see cref="RuleContext.Value"/> or <see cref="RuleContext.WholeValue"/>.</remarks>
public sealed record RuleOption
{
    /// <summary>The name in configurations, in camel case with its unit: <c>maximumMilliseconds</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it says, in a sentence.</summary>
    public required string Doc { get; init; }

    /// <summary>The value when the configuration sets none; from <see cref="Minimum"/> to <see cref="Maximum"/>.</summary>
    public required double Default { get; init; }

    /// <summary>The lowest value that may be set.</summary>
    public required double Minimum { get; init; }

    /// <summary>The highest value that may be set.</summary>
    public required double Maximum { get; init; }

    /// <summary>True when only whole numbers make sense.</summary>
    public bool IsWhole { get; init; }
}
