using System.Globalization;
using System.Text;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes findings as annotations of a GitHub workflow: one command a line.</summary>
/// <remarks>
/// Form and escaping: GitHub documentation, "Workflow commands for GitHub Actions", and <c>packages/core/src/command.ts</c> of <c>actions/toolkit</c>.
/// Waived findings and the coverage become notices, so that they show without failing anything.
/// </remarks>
internal sealed class GitHubReport(Stream output, ReportOptions options) : ReportWriter
{
    private readonly StreamWriter writer = new(output, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
    private readonly Coverage coverage = new(options.Rules);
    private ReportTotals totals;

    public override void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        totals.Add(document);
        coverage.Add(document.Result);
        foreach (var cause in ToldCause.Of(document))
        {
            var first = cause.Findings[0];
            var rules = string.Join(", ", cause.Findings.Select(finding => finding.Rule).Distinct());
            var number = cause.Number.ToString(CultureInfo.InvariantCulture);
            Annotate(Command(first.Severity), document.PlacePath, first, $"Cause {number}", $"{cause.Title}.\nWhat to do: {cause.Orders}.\nExplains {rules}.");
        }

        foreach (var finding in FindingSection.Of(document, document.Result.Findings).SelectMany(section => section.Findings))
        {
            Annotate(
                Command(finding.Severity),
                document.PlacePath,
                finding,
                $"{finding.Rule} {finding.Name}",
                $"{finding.Message}\n{finding.Remedy}".TrimEnd()
            );
        }

        foreach (var waived in document.Waived)
        {
            var (finding, waiver) = (waived.Finding, waived.Waiver);
            var text = $"{finding.Message}\nWaived by {waiver.Owner} until {PlainText.Day(waiver.Expires)}: {waiver.Reason}";
            Annotate("notice", document.PlacePath, finding, $"Waived: {finding.Rule} {finding.Name}", text);
        }

        foreach (var subject in document.Result.Undecided)
        {
            var what = subject.Rule == DocumentCheck.EveryRule ? subject.Reason : $"{subject.Rule}, {subject.Subject}: {subject.Reason}";
            Write("warning", $"file={Property(document.Path)},title=Not decided", what);
        }

        writer.Flush();
    }

    public override void Finish()
    {
        var counts = string.Create(CultureInfo.InvariantCulture, $"{ReportView.Counts(totals)}, {totals.Waived} waived, {totals.Known} known.");
        Write("notice", "title=What was looked at", totals.Documents == 0 ? "No document." : string.Join('\n', coverage.Sentences().Prepend(counts)));
        writer.Flush();
    }

    protected override void Dispose(bool disposing)
    {
        writer.Dispose();
        base.Dispose(disposing);
    }

    private void Annotate(string command, string path, Finding finding, string title, string text)
    {
        var place = finding.Line is { } line ? string.Create(CultureInfo.InvariantCulture, $",line={line},col={finding.Column ?? 1}") : "";
        Write(command, $"file={Property(path)}{place},title={Property(title)}", text);
    }

    private void Write(string command, string properties, string text) => writer.Write($"::{command} {properties}::{Data(text)}\n");

    private static string Command(Severity severity) =>
        severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "notice",
        };

    private static string Data(string text) =>
        string.Join("%0A", text.Split('\n').Select(line => PlainText.Show(line).Replace("%", "%25", StringComparison.Ordinal)));

    private static string Property(string text) => Data(text).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}
