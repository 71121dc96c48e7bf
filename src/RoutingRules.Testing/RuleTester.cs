using RoutingRules.Checking;
using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;

namespace RoutingRules.Testing;

/// <summary>Runs one rule on one show, for tests of rules.</summary>
public static class RuleTester
{
    /// <summary>Runs a rule at its usual severity and returns everything it said.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="show">The show; profiles written into it need no source.</param>
    /// <param name="sources">Further sources of profiles.</param>
    public static CheckResult Run(Rule rule, Show show, params ProfileSource[] sources) => Run(rule, show, [], sources);

    /// <summary>Runs a rule at its usual severity with options set and returns everything it said.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="show">The show; profiles written into it need no source.</param>
    /// <param name="options">Options that are set; the others keep their defaults.</param>
    /// <param name="sources">Further sources of profiles.</param>
    public static CheckResult Run(Rule rule, Show show, ValueList<RuleOptionValue> options, params ProfileSource[] sources)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(show);
        return SingleRule.Check(rule, show, options, sources);
    }

    /// <summary>The findings of a rule.</summary>
    /// <exception cref="InvalidOperationException">The rule failed or could not decide about a subject.</exception>
    public static ValueList<Finding> Findings(Rule rule, Show show, params ProfileSource[] sources)
    {
        var result = Run(rule, show, sources);
        return result.Undecided.IsEmpty
            ? result.Findings
            : throw new InvalidOperationException($"{result.Undecided[0].Rule} on {result.Undecided[0].Subject}: {result.Undecided[0].Reason}");
    }
}
