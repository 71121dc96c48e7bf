using RoutingRules.Configuration;
using RoutingRules.Model;

namespace RoutingRules.Rules;

/// <summary>The values of a rule's options.</summary>
internal static class OptionValues
{
    /// <summary>The value that is set, else the default.</summary>
    /// <exception cref="InvalidOperationException">The descriptor does not name the option.</exception>
    public static double Of(RuleDescriptor descriptor, ValueList<RuleOptionValue> set, RuleOption option)
    {
        var isDeclared = false;
        for (var i = 0; i < descriptor.Options.Count; i++)
        {
            isDeclared |= descriptor.Options[i] == option;
        }

        if (!isDeclared)
        {
            throw new InvalidOperationException($"Rule {descriptor.Id} reads option {option.Name} but does not declare it.");
        }

        var value = option.Default;
        foreach (var other in set)
        {
            value = other.Name == option.Name ? other.Value : value;
        }

        return value;
    }
}
