using System.Globalization;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>What one rule came to on one document, as a test case.</summary>
internal sealed class JUnitCase
{
    public JUnitCase(DocumentCheck document, RuleOutcome outcome, Severity failOn)
    {
        Rule = outcome.Descriptor;
        var own = document.Result.Findings.Where(finding => finding.Rule == Rule.Id).ToList();
        var failed = own.Where(finding => finding.Severity >= failOn).ToList();
        var undecided = document.Result.Undecided.Where(subject => subject.Rule == Rule.Id).Select(subject => $"{subject.Subject}: {subject.Reason}").ToList();
        Output.AddRange(own.Where(finding => finding.Severity < failOn).Select(finding => $"{PlainText.Word(finding.Severity)}: {Line(document, finding)}"));
        Output.AddRange(
            document
                .Waived.Where(waived => waived.Finding.Rule == Rule.Id)
                .Select(waived =>
                    $"waived by {waived.Waiver.Owner} until {PlainText.Day(waived.Waiver.Expires)} ({waived.Waiver.Reason}): {Line(document, waived.Finding)}"
                )
        );
        Output.AddRange(document.Known.Where(finding => finding.Rule == Rule.Id).Select(finding => $"known: {Line(document, finding)}"));
        if (failed.Count > 0)
        {
            Result = JUnitResult.Failure;
            Message = failed.Count == 1 ? failed[0].Message : string.Create(CultureInfo.InvariantCulture, $"{failed.Count} findings: {Rule.Title}");
            Details.AddRange(failed.Select(finding => Line(document, finding)));
            Details.AddRange(
                failed
                    .Select(finding => finding.Remedy)
                    .Where(remedy => remedy.Length > 0)
                    .Distinct(StringComparer.Ordinal)
                    .Select(remedy => $"What to do: {remedy}")
            );
            Details.AddRange(undecided.Select(reason => $"Not decided: {reason}"));
        }
        else if (undecided.Count > 0)
        {
            Result = JUnitResult.Error;
            Message =
                undecided.Count == 1
                    ? $"Not decided: {undecided[0]}"
                    : string.Create(CultureInfo.InvariantCulture, $"Not decided about {undecided.Count} subjects");
            Details.AddRange(undecided);
        }
        else if (outcome.Status is RuleStatus.NotApplicable or RuleStatus.Undecided)
        {
            Result = JUnitResult.Skipped;
            Message = outcome.Status == RuleStatus.NotApplicable ? "nothing to look at" : "not run, because the document could not be read in full";
        }
    }

    public RuleDescriptor Rule { get; }

    public JUnitResult Result { get; }

    /// <summary>One line; empty when passed.</summary>
    public string Message { get; } = "";

    public List<string> Details { get; } = [];

    /// <summary>What does not count against the case.</summary>
    public List<string> Output { get; } = [];

    private static string Line(DocumentCheck document, Finding finding) => $"{PlainText.Place(document.PlacePath, finding)}: {finding.Message}";
}
