using System.Globalization;
using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Reading;

namespace RoutingRules.Rules;

/// <summary>Chooses the rules to run, their severities and options by a configuration.</summary>
internal static class RuleSelection
{
    /// <param name="config">The configuration; of several settings of one thing the last counts.</param>
    /// <param name="rules">All rules, in order.</param>
    /// <returns>The rules that run, in the same order.</returns>
    /// <exception cref="InvalidOperationException">
    /// A setting names a rule that there is not, one of the readers', an option the rule does not have, or a value out of its range.
    /// </exception>
    public static ActiveRule[] Apply(EngineConfig config, Rule[] rules)
    {
        var enabled = new bool[rules.Length];
        var severity = Array.ConvertAll(rules, rule => rule.Descriptor.Severity);
        var options = new List<RuleOptionValue>[rules.Length];
        Array.Fill(enabled, true);
        foreach (var setting in config.Rules)
        {
            var at = Array.FindIndex(rules, rule => IsNamed(rule.Descriptor, setting.Rule));
            if (at < 0)
            {
                throw new InvalidOperationException(ReadingRules.All.Any(rule => IsNamed(rule, setting.Rule))
                    ? $"The configuration sets rule '{setting.Rule}', which belongs to reading and always counts; take the setting away."
                    : $"The configuration sets rule '{setting.Rule}', and there is none of that id or name; correct it or take the setting away.");
            }

            enabled[at] = setting.Enabled ?? enabled[at];
            severity[at] = setting.Severity ?? severity[at];
            foreach (var value in setting.Options)
            {
                Check(rules[at].Descriptor, value);
                (options[at] ??= []).Add(value);
            }
        }

        var active = new List<ActiveRule>();
        for (var i = 0; i < rules.Length; i++)
        {
            if (enabled[i])
            {
                active.Add(new ActiveRule(rules[i], severity[i], options[i] is null ? [] : options[i].ToValueList()));
            }
        }

        return [.. active];
    }

    private static void Check(RuleDescriptor rule, RuleOptionValue value)
    {
        var option = rule.Options.FirstOrDefault(option => option.Name == value.Name);
        if (option is null)
        {
            var known = rule.Options.IsEmpty ? "it has none" : $"it has {string.Join(", ", rule.Options.Select(known => known.Name))}";
            throw new InvalidOperationException(
                $"The configuration sets option '{value.Name}' of rule {rule.Id} ({rule.Name}), which has no such option: {known}. Correct the name or take the option away.");
        }

        if (value.Value < option.Minimum || value.Value > option.Maximum || (option.IsWhole && value.Value != Math.Floor(value.Value)))
        {
            throw new InvalidOperationException(string.Create(
                CultureInfo.InvariantCulture,
                $"The configuration sets option '{option.Name}' of rule {rule.Id} ({rule.Name}) to {value.Value}; it takes a {(option.IsWhole ? "whole " : "")}number from {option.Minimum} to {option.Maximum}, usually {option.Default}."));
        }
    }

    private static bool IsNamed(RuleDescriptor rule, string name) => rule.Id == name || rule.Name == name;
}
