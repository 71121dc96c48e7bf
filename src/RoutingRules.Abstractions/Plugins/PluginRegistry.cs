using RoutingRules.Assignment;
using RoutingRules.Fixing;
using RoutingRules.Profiles;
using RoutingRules.Rules;

namespace RoutingRules.Plugins;

/// <summary>Takes what a plugin brings.</summary>
public sealed class PluginRegistry
{
    private readonly List<Rule> rules;
    private readonly List<ProfileSource> profiles;
    private readonly List<FixProvider> fixes;

    private readonly List<AssignmentStrategy> strategies;

    internal PluginRegistry(List<Rule> rules, List<ProfileSource> profiles, List<FixProvider> fixes, List<AssignmentStrategy> strategies)
    {
        this.strategies = strategies;
        this.fixes = fixes;
        this.rules = rules;
        this.profiles = profiles;
    }

    /// <summary>Adds a rule.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="rule"/> is null.</exception>
    public PluginRegistry AddRule(Rule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        rules.Add(rule);
        return this;
    }

    /// <summary>Adds a source of profiles; sources added earlier win.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="source"/> is null.</exception>
    public PluginRegistry AddProfiles(ProfileSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        profiles.Add(source);
        return this;
    }

    /// <summary>Adds a provider of fixes for what a rule finds; of several for one rule the fixes are offered in the order they were added.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="provider"/> is null.</exception>
    public PluginRegistry AddFixes(FixProvider provider)
    {
        ArgumentNullException.ThrowIfNull(provider);
        fixes.Add(provider);
        return this;
    }

    /// <summary>Adds a strategy of assignment; <see cref="AssignmentOptions.Strategy"/> picks it by its name.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="strategy"/> is null.</exception>
    public PluginRegistry AddStrategy(AssignmentStrategy strategy)
    {
        ArgumentNullException.ThrowIfNull(strategy);
        strategies.Add(strategy);
        return this;
    }
}
