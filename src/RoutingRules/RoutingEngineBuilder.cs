using RoutingRules.Assignment;
using RoutingRules.Assignment.Strategies;
using RoutingRules.Checking;
using RoutingRules.Configuration;
using RoutingRules.Fixing;
using RoutingRules.Fixing.Providers;
using RoutingRules.Model;
using RoutingRules.Plugins;
using RoutingRules.Profiles;
using RoutingRules.Rules;
using RoutingRules.Signal.Profiles;

namespace RoutingRules;

/// <summary>Puts an engine together: rules, profiles and plugins. Not thread safe.</summary>
public sealed class RoutingEngineBuilder
{
    private readonly List<Rule> rules = [.. BuiltInRules.All];
    private readonly List<ProfileSource> profiles = [];
    private readonly List<FixProvider> fixes = [.. BuiltInFixes.All];
    private readonly List<AssignmentStrategy> strategies = [.. BuiltInStrategies.All];
    private readonly List<PluginInfo> plugins = [];
    private EngineConfig config = new();

    /// <summary>Adds a rule to the built-in ones.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="rule"/> is null.</exception>
    public RoutingEngineBuilder AddRule(Rule rule)
    {
        ArgumentNullException.ThrowIfNull(rule);
        rules.Add(rule);
        return this;
    }

    /// <summary>Adds a source of profiles; sources added earlier win, profiles written into a show win over all.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="source"/> is null.</exception>
    public RoutingEngineBuilder AddProfiles(ProfileSource source)
    {
        ArgumentNullException.ThrowIfNull(source);
        profiles.Add(source);
        return this;
    }

    /// <summary>Adds what a plugin brings.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="plugin"/> is null.</exception>
    public RoutingEngineBuilder AddPlugin(RoutingPlugin plugin)
    {
        ArgumentNullException.ThrowIfNull(plugin);
        plugins.Add(plugin.Info);
        plugin.Register(new PluginRegistry(rules, profiles, fixes, strategies));
        return this;
    }

    /// <summary>Adds a provider of fixes for what a rule finds; of several for one rule the fixes are offered in the order they were added.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="provider"/> is null.</exception>
    public RoutingEngineBuilder AddFixes(FixProvider provider)
    {
        ArgumentNullException.ThrowIfNull(provider);
        fixes.Add(provider);
        return this;
    }

    /// <summary>Adds a strategy of assignment to the built-in ones; <see cref="AssignmentOptions.Strategy"/> picks it by its name.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="strategy"/> is null.</exception>
    public RoutingEngineBuilder AddStrategy(AssignmentStrategy strategy)
    {
        ArgumentNullException.ThrowIfNull(strategy);
        strategies.Add(strategy);
        return this;
    }

    /// <summary>Sets which rules run and how grave their findings are; of several calls the last counts.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="config"/> is null.</exception>
    public RoutingEngineBuilder UseConfig(EngineConfig config)
    {
        ArgumentNullException.ThrowIfNull(config);
        this.config = config;
        return this;
    }

    /// <summary>
    /// What is wrong with the settings of rules in the configuration: unknown rules and options, values out of range. Each has the pointer of its place.
    /// Empty when <see cref="Build"/> will take the configuration.
    /// </summary>
    public ValueList<Finding> FindConfigProblems() =>
        RuleSelection.Problems(config, rules.OrderBy(rule => rule.Descriptor.Id, StringComparer.Ordinal).ToArray());

    /// <summary>Makes the engine.</summary>
    /// <exception cref="InvalidOperationException">Two rules have the same id or the same name, two strategies have the same name, or the configuration names a
    /// rule that cannot be set.</exception>
    public RoutingEngine Build()
    {
        var ordered = rules.OrderBy(rule => rule.Descriptor.Id, StringComparer.Ordinal).ToArray();
        for (var i = 1; i < ordered.Length; i++)
        {
            if (ordered[i].Descriptor.Id == ordered[i - 1].Descriptor.Id)
            {
                throw new InvalidOperationException($"Two rules have the id {ordered[i].Descriptor.Id}.");
            }
        }

        if (ordered.GroupBy(rule => rule.Descriptor.Name, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1) is { } clash)
        {
            throw new InvalidOperationException($"Two rules have the name {clash.Key}.");
        }

        if (strategies.GroupBy(strategy => strategy.Name, StringComparer.Ordinal).FirstOrDefault(group => group.Count() > 1) is { } twins)
        {
            throw new InvalidOperationException($"Two strategies have the name {twins.Key}.");
        }

        if (RuleSelection.Problems(config, ordered) is { IsEmpty: false } problems)
        {
            throw new InvalidOperationException(problems[0].Message);
        }

        return new RoutingEngine(
            ordered,
            RuleSelection.Apply(config, ordered),
            new ProfileLibrary(profiles),
            [.. fixes],
            [.. strategies],
            [.. plugins],
            config
        );
    }
}
