using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Findings of rules that answers report themselves.</summary>
internal static class RuleFinding
{
    /// <summary>A finding at the rule's own severity, with its remedy.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="message">What is wrong and where.</param>
    /// <param name="pointer">The place as a JSON Pointer; empty for the whole document.</param>
    /// <param name="entities">What it is about.</param>
    public static Finding Of(RuleDescriptor rule, string message, string pointer, params ValueList<Entity> entities) =>
        new()
        {
            Rule = rule.Id,
            Name = rule.Name,
            Severity = rule.Severity,
            Message = message,
            Remedy = rule.Remedy,
            Pointer = pointer,
            Entities = entities,
        };
}
