using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Checking;

/// <summary>Runs one rule alone on a show, also on one that no engine lets in.</summary>
public static class SingleRule
{
    /// <summary>What the rule says at its usual severity.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="show">The show; profiles written into it need no source.</param>
    /// <param name="options">Options that are set; the others keep their defaults.</param>
    /// <param name="sources">Further sources of profiles.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static CheckResult Check(Rule rule, Show show, ValueList<RuleOptionValue> options, params ProfileSource[] sources)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(show);
        var profiles = new ProfileLibrary(sources);
        return TwoReadings.Run(
            ShowResolver.Resolve(show, profiles),
            profiles,
            [new ActiveRule(rule, rule.Descriptor.Severity, options)],
            RuleRunner.DefaultBudget,
            CancellationToken.None
        );
    }
}
