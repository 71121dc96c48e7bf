using RoutingRules.Configuration;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Checking;

/// <summary>A rule that runs, as the configuration wants it.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Severity">The severity of its findings.</param>
/// <param name="Options">The options that are set; the others keep their defaults.</param>
internal readonly record struct ActiveRule(Rule Rule, Severity Severity, ValueList<RuleOptionValue> Options);
