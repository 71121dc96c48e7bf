using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;
using RoutingRules.Waivers;

namespace RoutingRules.Tests.Reports;

/// <summary>Checks written by hand for tests of reports.</summary>
internal static class ReportSamples
{
    public static RuleDescriptor Rule(string id, Severity severity) =>
        new()
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
        };

    public static Finding Finding(string rule, Severity severity, string message, string remedy, int? line = null) =>
        new()
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

    public static RuleOutcome Outcome(string id, RuleStatus status) =>
        new()
        {
            Descriptor = Rule(id, Severity.Error),
            Status = status,
            Subjects = 1,
            WorkUnits = 1,
        };

    public static DocumentCheck Clean { get; } =
        new()
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

    public static DocumentCheck Mixed { get; } =
        new()
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
                Rules =
                [
                    Outcome("T1", RuleStatus.Found),
                    Outcome("T2", RuleStatus.Found),
                    Outcome("T3", RuleStatus.Undecided),
                    Outcome("T4", RuleStatus.Passed),
                ],
                Undecided =
                [
                    new()
                    {
                        Rule = "T3",
                        Subject = "feed mon",
                        Reason = "Its colour is not known.",
                    },
                ],
                WasRead = true,
            },
        };

    /// <summary>The first finding waived, the second known, one gone, one that counts.</summary>
    public static DocumentCheck Excused { get; } =
        Mixed with
        {
            Path = "c.show.json",
            Result = Mixed.Result with { Findings = [Mixed.Result.Findings[2]] },
            Waived =
            [
                new()
                {
                    Finding = Mixed.Result.Findings[0],
                    Waiver = new Waiver
                    {
                        Rule = "T1",
                        Entities = Mixed.Result.Findings[0].Entities,
                        Reason = "Rented amp, back on Monday",
                        Owner = "Mira",
                        Expires = new DateOnly(2027, 6, 14),
                        Scope = ["**"],
                    },
                },
            ],
            Known = [Mixed.Result.Findings[1]],
            Gone =
            [
                new()
                {
                    Rule = "T1",
                    Fingerprint = "00000000000000aa",
                    Entities = [Entity.Of("output", "box/out/9")],
                },
            ],
            IsCompared = true,
        };

    /// <summary>A document that could not be read.</summary>
    public static DocumentCheck Unreadable { get; } =
        new()
        {
            Path = "d.show.json",
            Result = new CheckResult
            {
                Findings = [Finding("T1", Severity.Error, "Cut off.", "Save it again.", 3)],
                Rules = [Outcome("T1", RuleStatus.Found), Outcome("T2", RuleStatus.Undecided)],
                Undecided =
                [
                    new()
                    {
                        Rule = DocumentCheck.EveryRule,
                        Subject = "",
                        Reason = "The document could not be read in full, so no rule was run on it.",
                    },
                ],
                WasRead = false,
            },
        };

    /// <summary>A catalogue that also has a rule which never runs.</summary>
    public static ReportOptions Options { get; } =
        new()
        {
            Rules =
            [
                Rule("T1", Severity.Warning),
                Rule("T2", Severity.Error),
                Rule("T3", Severity.Error),
                Rule("T4", Severity.Error),
                Rule("T9", Severity.Note) with
                {
                    Name = "never-run",
                },
            ],
        };

    /// <summary>A report of documents in a format, as text.</summary>
    public static string Write(string format, params DocumentCheck[] documents)
    {
        using var output = new MemoryStream();
        using (var report = ReportFormats.Find(format)!.Create(output, Options))
        {
            foreach (var document in documents)
            {
                report.Add(document);
            }

            report.Finish();
        }

        return System.Text.Encoding.UTF8.GetString(output.ToArray());
    }
}
