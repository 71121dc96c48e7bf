using RoutingRules.Profiles;
using RoutingRules.Rules;

namespace RoutingRules.Plugins;

/// <summary>Takes what a plugin brings.</summary>
public sealed class PluginRegistry
{
    private readonly List<Rule> rules;
    private readonly List<ProfileSource> profiles;

    internal PluginRegistry(List<Rule> rules, List<ProfileSource> profiles)
    {
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
}
