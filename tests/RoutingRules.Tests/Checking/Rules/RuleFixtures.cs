using System.Reflection;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Checking.Rules;

/// <summary>The fixtures of the tests of rules: every show that a fact without arguments expects a rule to find fault with, or to pass.</summary>
internal static class RuleFixtures
{
    /// <summary>By rule id, in the order of classes and methods by name.</summary>
    public static SortedDictionary<string, List<(Rule Rule, Show Show)>> All()
    {
        var all = new SortedDictionary<string, List<(Rule Rule, Show Show)>>(StringComparer.Ordinal);
        Expect.Watch((rule, show) => (all.TryGetValue(rule.Descriptor.Id, out var known) ? known : all[rule.Descriptor.Id] = []).Add((rule, show)));
        try
        {
            foreach (var type in typeof(RuleFixtures).Assembly.GetTypes().Where(IsOfRules).OrderBy(type => type.FullName, StringComparer.Ordinal))
            {
                foreach (var fact in type.GetMethods().Where(IsFact).OrderBy(method => method.Name, StringComparer.Ordinal))
                {
                    fact.Invoke(Activator.CreateInstance(type), null);
                }
            }
        }
        finally
        {
            Expect.Watch(null);
        }

        return all;
    }

    private static bool IsOfRules(Type type) =>
        type is { IsClass: true, IsAbstract: false, IsPublic: true }
        && type.Namespace?.StartsWith("RoutingRules.Tests.Checking.Rules", StringComparison.Ordinal) == true
        && type.GetConstructor([]) is not null
        && type.GetCustomAttributes<TraitAttribute>().Any() == false
        && type != typeof(RuleExamplesTests);

    // Properties are facts of a kind of their own.
    private static bool IsFact(MethodInfo method) =>
        method.GetParameters().Length == 0
        && method.ReturnType == typeof(void)
        && method.GetCustomAttributes().Any(attribute => attribute.GetType() == typeof(FactAttribute));
}
