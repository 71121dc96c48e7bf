namespace RoutingRules.Rules;

/// <summary>A rule: it looks at one kind of subject and reports what is wrong with it.</summary>
/// <remarks>
/// Derive from <see cref="Rule{TSubject}"/>. A rule holds no state between calls, does no I/O and asks no clock: the same show always gives the
/// same findings. One instance serves many threads.
/// </remarks>
public abstract class Rule
{
    private protected Rule() { }

    /// <summary>What the rule is. Must be the same object on every call.</summary>
    public abstract RuleDescriptor Descriptor { get; }

    /// <summary>The type of its subjects.</summary>
    public abstract Type SubjectType { get; }
}
