namespace RoutingRules.Assignment;

/// <summary>A show uses something that a strategy cannot take into account. Another strategy may.</summary>
public sealed class UnsupportedAssignmentException : NotSupportedException
{
    /// <summary>Says what is not supported.</summary>
    /// <param name="strategy">The name of the strategy.</param>
    /// <param name="feature">What it cannot take into account, in words that fit after "does not support".</param>
    public UnsupportedAssignmentException(string strategy, string feature)
        : base($"The strategy '{strategy}' does not support {feature}; use another strategy for this show.")
    {
        Strategy = strategy;
        Feature = feature;
    }

    /// <summary>The name of the strategy.</summary>
    public string Strategy { get; }

    /// <summary>What is not supported.</summary>
    public string Feature { get; }
}
