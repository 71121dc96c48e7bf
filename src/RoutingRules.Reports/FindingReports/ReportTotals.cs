using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Counts over one document or many.</summary>
internal struct ReportTotals
{
    public int Documents { get; private set; }

    public int Clean { get; private set; }

    public int Unreadable { get; private set; }

    public int Errors { get; private set; }

    public int Warnings { get; private set; }

    public int Notes { get; private set; }

    public int Waived { get; private set; }

    public int Known { get; private set; }

    public int Gone { get; private set; }

    public int UndecidedSubjects { get; private set; }

    public static ReportTotals Of(DocumentCheck document)
    {
        var totals = default(ReportTotals);
        totals.Add(document);
        return totals;
    }

    public void Add(DocumentCheck document)
    {
        Documents++;
        Clean += document.Status == DocumentStatus.Clean ? 1 : 0;
        Unreadable += document.Status == DocumentStatus.Unreadable ? 1 : 0;
        Waived += document.Waived.Count;
        Known += document.Known.Count;
        Gone += document.Gone.Count;
        UndecidedSubjects += document.Result.Undecided.Count;
        foreach (var finding in document.Result.Findings)
        {
            Errors += finding.Severity == Severity.Error ? 1 : 0;
            Warnings += finding.Severity == Severity.Warning ? 1 : 0;
            Notes += finding.Severity == Severity.Note ? 1 : 0;
        }
    }

    /// <summary>How many rules passed, had nothing to look at, and could not decide about some subject.</summary>
    public static (int Passed, int NotApplicable, int Undecided) Rules(CheckResult result)
    {
        var passed = 0;
        var notApplicable = 0;
        var undecided = 0;
        foreach (var rule in result.Rules)
        {
            passed += rule.Status == RuleStatus.Passed ? 1 : 0;
            notApplicable += rule.Status == RuleStatus.NotApplicable ? 1 : 0;
            undecided += rule.Status == RuleStatus.Undecided || result.Undecided.Any(subject => subject.Rule == rule.Descriptor.Id) ? 1 : 0;
        }

        return (passed, notApplicable, undecided);
    }
}
