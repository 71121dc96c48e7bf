using RoutingRules.Model;
using RoutingRules.Rules;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>Asserts everything a rule says about a show.</summary>
internal static class Expect
{
    private static readonly AsyncLocal<Action<Rule, Show>?> Watching = new();

    /// <summary>Tells somebody about every fixture of this test; null for nobody.</summary>
    public static void Watch(Action<Rule, Show>? watcher) => Watching.Value = watcher;

    public static void None(Rule rule, Show show)
    {
        Watching.Value?.Invoke(rule, show);
        Assert.Empty(RuleTester.Findings(rule, show));
    }

    public static void One(Rule rule, Show show, Severity severity, string pointer, string message, params string[] entities)
    {
        Watching.Value?.Invoke(rule, show);
        Finding(Assert.Single(RuleTester.Findings(rule, show)), rule, severity, pointer, message, entities);
    }

    public static void Finding(Finding finding, Rule rule, Severity severity, string pointer, string message, params string[] entities)
    {
        Assert.Equal(message, finding.Message);
        Assert.Equal(pointer, finding.Pointer);
        Assert.Equal(severity, finding.Severity);
        Assert.Equal(entities, finding.Entities.Select(entity => $"{entity.Role}={entity.Id}"));
        Assert.Equal(rule.Descriptor.Id, finding.Rule);
        Assert.Equal(rule.Descriptor.Name, finding.Name);
    }

    public static string[] Fingerprints(Rule rule, Show show) =>
        [.. RuleTester.Findings(rule, show).Select(finding => finding.Fingerprint()).Order(StringComparer.Ordinal)];
}
