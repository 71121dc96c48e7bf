using Mono.Cecil;
using RoutingRules.Assignment.Strategies;
using RoutingRules.Checking;
using RoutingRules.Fixing.Providers;
using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Architecture.Tests;

/// <summary>Nothing is found by scanning, so everything must be listed.</summary>
public class RegistryTests
{
    [Fact]
    public void Every_rule_is_listed() => AssertListed("RoutingRules", "Rule", BuiltInRules.All.Select(rule => rule.GetType()));

    [Fact]
    public void Every_provider_of_fixes_is_listed() => AssertListed("RoutingRules", "FixProvider", BuiltInFixes.All.Select(provider => provider.GetType()));

    [Fact]
    public void Every_strategy_is_listed() => AssertListed("RoutingRules", "AssignmentStrategy", BuiltInStrategies.All.Select(strategy => strategy.GetType()));

    [Fact]
    public void Every_report_of_findings_is_listed()
    {
        var formats = ReportFormats
            .All.Select(format => format.Create(new MemoryStream(), new ReportOptions()).GetType().FullName!)
            .Order(StringComparer.Ordinal);

        Assert.Equal(Concrete("RoutingRules.Reports", "ReportWriter"), formats);
    }

    private static void AssertListed(string assembly, string baseType, IEnumerable<Type> listed)
    {
        var compiled = Concrete(assembly, baseType);

        Assert.NotEmpty(compiled);
        Assert.Equal(compiled, listed.Select(type => type.FullName!).Distinct().Order(StringComparer.Ordinal));
    }

    private static List<string> Concrete(string assembly, string baseType) =>
        [
            .. CompiledTypes
                .Of(assembly)
                .Types.Where(type => !type.IsAbstract && Bases(type).Contains(baseType))
                .Select(type => type.FullName)
                .Order(StringComparer.Ordinal),
        ];

    private static IEnumerable<string> Bases(TypeDefinition type)
    {
        for (
            var above = type.BaseType;
            above is not null;
            above = above.FullName.StartsWith("RoutingRules", StringComparison.Ordinal) ? above.Resolve()?.BaseType : null
        )
            yield return above.Name.Split('`')[0];
    }
}
