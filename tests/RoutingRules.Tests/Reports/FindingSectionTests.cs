using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reports;

public sealed class FindingSectionTests
{
    private static readonly RoutingEngine Engine = RoutingEngine.CreateBuilder().Build();

    private static Finding Of(string rule, Severity severity, int number = 1) =>
        new()
        {
            Rule = rule,
            Name = rule.ToLowerInvariant(),
            Severity = severity,
            Message = "Found.",
            Remedy = "",
            Entities = [Entity.Of("number", $"{number}")],
            Pointer = "",
        };

    private static DocumentCheck With(params Finding[] findings) =>
        new() { Path = "a.show.json", Result = Engine.Check(new Show { Title = "Empty", Rig = new() }) with { Findings = findings.ToValueList() } };

    [Fact]
    public void Hearing_comes_first_then_errors_and_each_by_family()
    {
        var document = With(
            Of("RR2009", Severity.Warning),
            Of("RR3001", Severity.Error),
            Of("RR5002", Severity.Error),
            Of("RR7001", Severity.Note),
            Of("RR9007", Severity.Warning),
            Of("RR9001", Severity.Error)
        );

        Assert.Equal(
            [
                "Hearing: RR9001 rr9001 (error), RR9007 rr9007 (warning)",
                "Errors: RR3001 rr3001, RR5002 rr5002",
                "Warnings: RR2009 rr2009",
                "Notes: RR7001 rr7001",
            ],
            FindingSection
                .Of(document, document.Result.Findings)
                .Select(section => $"{section.Title}: {string.Join(", ", section.Findings.Select(section.Rule))}")
        );
    }

    [Fact]
    public void More_than_twenty_are_counted_by_rule()
    {
        Finding[] many =
        [
            .. Enumerable.Range(1, 15).Select(number => Of("RR6001", Severity.Error, number)),
            .. Enumerable.Range(1, 4).Select(number => Of("RR3001", Severity.Error, number)),
        ];

        Assert.Null(FindingSection.CountsByRule(With([.. many, Of("RR7001", Severity.Note)])));
        Assert.Equal(
            "By rule: RR6001 rr6001 15, RR3001 rr3001 4, 2 rules with one.",
            FindingSection.CountsByRule(With([.. many, Of("RR7001", Severity.Note), Of("RR2009", Severity.Warning)]))
        );
    }
}
