using RoutingRules.Assignment;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Plugins;
using RoutingRules.Profiles;
using RoutingRules.Rules;

namespace RoutingRules.Engine.Plugins;

/// <summary>What a plugin brings.</summary>
public sealed record PluginContents
{
    /// <summary>What it says about itself.</summary>
    public required PluginInfo Info { get; init; }

    /// <summary>Its rules, by id.</summary>
    public ValueList<RuleDescriptor> Rules { get; init; }

    /// <summary>The ids of its profiles, each once, in order.</summary>
    public ValueList<Id<DeviceProfile>> Profiles { get; init; }

    /// <summary>The ids of the rules that it has fixes for, each once, in order.</summary>
    public ValueList<string> FixedRules { get; init; }

    /// <summary>The names of its strategies, in the order it adds them.</summary>
    public ValueList<string> Strategies { get; init; }

    /// <summary>Asks a plugin. It registers as for an engine, and whatever it throws passes through.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="plugin"/> is null.</exception>
    public static PluginContents Of(RoutingPlugin plugin)
    {
        ArgumentNullException.ThrowIfNull(plugin);
        var rules = new List<Rule>();
        var profiles = new List<ProfileSource>();
        var fixes = new List<FixProvider>();
        var strategies = new List<AssignmentStrategy>();
        plugin.Register(new PluginRegistry(rules, profiles, fixes, strategies));
        return new PluginContents
        {
            Info = plugin.Info,
            Rules = rules.Select(rule => rule.Descriptor).OrderBy(rule => rule.Id, StringComparer.Ordinal).ToValueList(),
            Profiles = profiles.SelectMany(source => source.Ids).Distinct().Order().ToValueList(),
            FixedRules = fixes.Select(provider => provider.RuleId).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToValueList(),
            Strategies = strategies.Select(strategy => strategy.Name).ToValueList(),
        };
    }
}
