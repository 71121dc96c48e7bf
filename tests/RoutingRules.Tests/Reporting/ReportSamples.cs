using RoutingRules.Reporting;
using RoutingRules.Rules;

namespace RoutingRules.Tests.Reporting;

/// <summary>Checks written by hand for tests of reports.</summary>
internal static class ReportSamples
{
    public static RuleDescriptor Rule(string id, Severity severity) => new()
    {
        Id = id,
        Name = id.ToLowerInvariant(),
        Title = $"Title of {id}",
        Family = RuleFamily.Points,
        Severity = severity,
        Checks = "Something.",
        Why = "Because.",
        Remedy = $"Mend {id}.",
        Source = "common practice, no source",
        Reads = ModelSlices.None,
    };

    public static Finding Finding(string rule, Severity severity, string message, string remedy, int? line = null) => new()
    {
        Rule = rule,
        Name = rule.ToLowerInvariant(),
        Severity = severity,
        Message = message,
        Remedy = remedy,
        Entities = [Entity.Of("output", "box/out/5")],
        Pointer = "/patch/routes/3",
        Line = line,
        Column = line is null ? null : 9,
    };

    public static RuleOutcome Outcome(string id, RuleStatus status) => new() { Descriptor = Rule(id, Severity.Error), Status = status, Subjects = 1, WorkUnits = 1 };

    public static DocumentCheck Clean { get; } = new()
    {
        Path = "a.show.json",
        Result = new CheckResult
        {
            Findings = default,
            Rules = [Outcome("T1", RuleStatus.Passed), Outcome("T2", RuleStatus.NotApplicable), Outcome("T3", RuleStatus.Passed)],
            Undecided = default,
            WasRead = true,
        },
    };

    public static DocumentCheck Mixed { get; } = new()
    {
        Path = "b.show.json",
        Result = new CheckResult
        {
            Findings =
            [
                Finding("T1", Severity.Warning, "First.", "Mend T1.", 41),
                Finding("T1", Severity.Warning, "Second.", "Mend T1.", 52),
                Finding("T2", Severity.Error, "Third.", "Mend this.", 7),
                Finding("T2", Severity.Error, "Fourth.", "Mend that."),
                Finding("T2", Severity.Note, "Fifth.", "Mend that.", 8),
            ],
            Rules = [Outcome("T1", RuleStatus.Found), Outcome("T2", RuleStatus.Found), Outcome("T3", RuleStatus.Undecided), Outcome("T4", RuleStatus.Passed)],
            Undecided = [new() { Rule = "T3", Subject = "feed mon", Reason = "Its colour is not known." }],
            WasRead = true,
        },
    };
}
