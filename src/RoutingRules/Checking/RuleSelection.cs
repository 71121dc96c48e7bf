using System.Globalization;
using RoutingRules.Checking.Catalogue;
using RoutingRules.Configuration;
using RoutingRules.Documents.Tables;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Checking;

/// <summary>Chooses the rules to run, their severities and options by a configuration.</summary>
internal static class RuleSelection
{
    private const char Star = '*';

    /// <summary>What is wrong with the settings of rules, in their order: each with the pointer of its place in the configuration.</summary>
    public static ValueList<Finding> Problems(EngineConfig config, Rule[] rules)
    {
        var problems = new List<Finding>();
        if (!config.Extends.IsEmpty)
        {
            problems.Add(ReadingRules.Malformed("The configuration extends others, which have to be loaded with it.", "/extends"));
        }

        for (var i = 0; i < config.Rules.Count; i++)
        {
            Check(config.Rules[i], string.Create(CultureInfo.InvariantCulture, $"/rules/{i}"), rules, problems);
        }

        return problems.ToValueList();
    }

    /// <param name="config">The configuration, without problems; of several settings of one thing the last counts.</param>
    /// <param name="rules">All rules, in order.</param>
    /// <returns>The rules that run, in the same order.</returns>
    public static ActiveRule[] Apply(EngineConfig config, Rule[] rules)
    {
        var active = new List<ActiveRule>();
        foreach (var rule in rules)
        {
            var enabled = true;
            var severity = rule.Descriptor.Severity;
            var options = new List<RuleOptionValue>();
            foreach (var setting in config.Rules)
            {
                if (Selects(setting.Rule, rule.Descriptor))
                {
                    enabled = setting.Enabled ?? enabled;
                    severity = setting.Severity ?? severity;
                    options.AddRange(setting.Options.Where(value => Find(rule.Descriptor, value) is not null));
                }
            }

            if (enabled)
            {
                active.Add(new ActiveRule(rule, severity, options.ToValueList()));
            }
        }

        return [.. active];
    }

    /// <summary>Whether a setting is about a rule: by id, by name, or by the beginning of the id with a star.</summary>
    public static bool Selects(string selector, RuleDescriptor rule) =>
        selector.EndsWith(Star)
            ? rule.Id.AsSpan().StartsWith(selector.AsSpan(0, selector.Length - 1), StringComparison.Ordinal)
            : rule.Id == selector || rule.Name == selector;

    /// <summary>The value that an option of a rule has, whether the rule runs or not.</summary>
    public static double Value(EngineConfig config, RuleDescriptor rule, RuleOption option)
    {
        var value = option.Default;
        foreach (var setting in config.Rules)
        {
            foreach (var given in Selects(setting.Rule, rule) ? setting.Options : default)
            {
                value = given.Name == option.Name ? given.Value : value;
            }
        }

        return value;
    }

    private static void Check(RuleSetting setting, string pointer, Rule[] rules, List<Finding> problems)
    {
        var selected = rules.Where(rule => Selects(setting.Rule, rule.Descriptor)).Select(rule => rule.Descriptor).ToList();
        if (selected.Count == 0)
        {
            var isFixed = StandingRules.All.Any(rule => Selects(setting.Rule, rule));
            problems.Add(
                ReadingRules.Malformed(
                    isFixed
                            ? $"The configuration sets rule '{setting.Rule}', which belongs to reading, waivers, comparisons or running orders and "
                                + "always counts; take the setting away."
                        : setting.Rule.EndsWith(Star)
                            ? $"The configuration sets the rules '{setting.Rule}', and no id begins so; correct it or take the setting away."
                        : $"The configuration sets rule '{setting.Rule}', and there is none of that id or name; correct it or take the setting away.",
                    $"{pointer}/rule"
                )
            );
            return;
        }

        for (var i = 0; i < setting.Options.Count; i++)
        {
            Check(setting, setting.Options[i], selected, string.Create(CultureInfo.InvariantCulture, $"{pointer}/options/{i}"), problems);
        }
    }

    private static void Check(RuleSetting setting, RuleOptionValue value, List<RuleDescriptor> selected, string pointer, List<Finding> problems)
    {
        var isKnown = false;
        foreach (var rule in selected)
        {
            if (Find(rule, value) is not { } option)
            {
                continue;
            }

            isKnown = true;
            if (value.Value < option.Minimum || value.Value > option.Maximum || (option.IsWhole && value.Value != Math.Floor(value.Value)))
            {
                problems.Add(
                    ReadingRules.Malformed(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"The configuration sets option '{option.Name}' of rule {rule.Id} ({rule.Name}) to {value.Value}; it takes a "
                                + $"{(option.IsWhole ? "whole " : "")}number from {option.Minimum} to {option.Maximum}, usually {option.Default}."
                        ),
                        $"{pointer}/value"
                    )
                );
            }
        }

        if (!isKnown)
        {
            var known = selected.SelectMany(rule => rule.Options).Select(option => option.Name).Distinct(StringComparer.Ordinal).ToList();
            var names =
                selected.Count == 1
                    ? $"of rule {selected[0].Id} ({selected[0].Name}), which has no such option: "
                    : $"of the rules '{setting.Rule}', none of which has such an option: ";
            var others =
                known.Count > 0 ? $"{(selected.Count == 1 ? "it has" : "they have")} {string.Join(", ", known)}"
                : selected.Count == 1 ? "it has none"
                : "they have none";
            problems.Add(
                ReadingRules.Malformed(
                    $"The configuration sets option '{value.Name}' {names}{others}. Correct the name or take the option away.",
                    $"{pointer}/name"
                )
            );
        }
    }

    private static RuleOption? Find(RuleDescriptor rule, RuleOptionValue value) => rule.Options.FirstOrDefault(option => option.Name == value.Name);
}
