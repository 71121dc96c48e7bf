using RoutingRules.Configuration;
using RoutingRules.Reading;

namespace RoutingRules.Rules;

/// <summary>Chooses the rules to run and their severities by a configuration.</summary>
internal static class RuleSelection
{
    /// <param name="config">The configuration; of several settings of one rule the last counts.</param>
    /// <param name="rules">All rules, in order.</param>
    /// <returns>The rules that run, in the same order.</returns>
    /// <exception cref="InvalidOperationException">A setting names a rule that there is not, or one of the readers'.</exception>
    public static (Rule Rule, Severity Severity)[] Apply(EngineConfig config, Rule[] rules)
    {
        var enabled = new bool[rules.Length];
        var severity = Array.ConvertAll(rules, rule => rule.Descriptor.Severity);
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
        }

        var active = new List<(Rule Rule, Severity Severity)>();
        for (var i = 0; i < rules.Length; i++)
        {
            if (enabled[i])
            {
                active.Add((rules[i], severity[i]));
            }
        }

        return [.. active];
    }

    private static bool IsNamed(RuleDescriptor rule, string name) => rule.Id == name || rule.Name == name;
}
