using System.Globalization;
using RoutingRules.Rules;

namespace RoutingRules.Reporting;

/// <summary>Writes what checking documents came to, for people.</summary>
/// <remarks>
/// Findings are grouped by severity, the worst first, then by rule; each has its place as <c>file:line:column</c>, and the remedy stands once for each rule.
/// Lines end with LF; the same documents give the same text. Characters that could steer a terminal are written out. Not thread safe.
/// </remarks>
public sealed class TextReport
{
    private static readonly Severity[] WorstFirst = [Severity.Error, Severity.Warning, Severity.Note];

    private readonly TextWriter output;
    private readonly Severity lowest;
    private ReportTotals totals;

    /// <summary>A report.</summary>
    /// <param name="output">Where it is written; stays open.</param>
    /// <param name="lowest">Findings milder than this are counted, not listed; above <see cref="Severity.Note"/> clean documents are not listed either.</param>
    /// <exception cref="ArgumentNullException"><paramref name="output"/> is null.</exception>
    public TextReport(TextWriter output, Severity lowest = Severity.Note)
    {
        ArgumentNullException.ThrowIfNull(output);
        this.output = output;
        this.lowest = lowest;
    }

    /// <summary>Writes one document.</summary>
    public void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        totals.Add(document);
        if (document.Status == DocumentStatus.Clean)
        {
            if (lowest == Severity.Note)
            {
                Line($"{PlainText.Show(document.Path)}: clean. {Coverage(document.Result)}");
            }

            return;
        }

        Line($"{PlainText.Show(document.Path)}: {Headline(document)}");
        var titles = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var rule in document.Result.Rules)
        {
            titles.TryAdd(rule.Descriptor.Id, rule.Descriptor.Title);
        }

        var told = new HashSet<(string Rule, string Remedy)>();
        foreach (var severity in WorstFirst)
        {
            WriteFindings(document, severity, titles, told);
        }

        WriteUndecided(document.Result);
        Line("");
        if (document.Result.WasRead)
        {
            Line($"  {Coverage(document.Result)}");
            Line("");
        }
    }

    /// <summary>Writes the totals when there was more than one document.</summary>
    public void Finish()
    {
        if (totals.Documents > 1)
        {
            var others = totals.Documents - totals.Clean - totals.Unreadable;
            Line(string.Create(
                CultureInfo.InvariantCulture,
                $"{totals.Documents} documents: {totals.Clean} clean, {others} with something to look at, {totals.Unreadable} unreadable; {Counts(totals)}."));
        }
    }

    private void WriteFindings(DocumentCheck document, Severity severity, Dictionary<string, string> titles, HashSet<(string Rule, string Remedy)> told)
    {
        var groups = document.Result.Findings
            .Where(finding => finding.Severity == severity && severity >= lowest)
            .GroupBy(finding => (finding.Rule, finding.Name))
            .ToList();
        if (groups.Count > 0)
        {
            Line("");
            Line(severity switch { Severity.Error => "Errors", Severity.Warning => "Warnings", _ => "Notes" });
        }

        foreach (var rule in groups)
        {
            Line("");
            Line($"  {rule.Key.Rule} {rule.Key.Name}{(titles.TryGetValue(rule.Key.Rule, out var title) ? $": {title}" : "")}");
            foreach (var remedy in rule.GroupBy(finding => finding.Remedy, StringComparer.Ordinal))
            {
                foreach (var finding in remedy)
                {
                    Line($"    {PlainText.Show(document.Path)}{Place(finding)}: {PlainText.Show(finding.Message)}");
                }

                if (remedy.Key.Length > 0 && told.Add((rule.Key.Rule, remedy.Key)))
                {
                    Line($"    What to do: {PlainText.Show(remedy.Key)}");
                }
            }
        }
    }

    private void WriteUndecided(CheckResult result)
    {
        if (result.Undecided.IsEmpty)
        {
            return;
        }

        Line("");
        Line("Not decided");
        Line("");
        foreach (var subject in result.Undecided)
        {
            Line(subject.Rule == DocumentCheck.EveryRule
                ? $"  {PlainText.Show(subject.Reason)}"
                : $"  {subject.Rule}, {PlainText.Show(subject.Subject)}: {PlainText.Show(subject.Reason)}");
        }
    }

    private string Headline(DocumentCheck document)
    {
        var counts = ReportTotals.Of(document);
        var hidden = document.Result.Findings.Count(finding => finding.Severity < lowest);
        var headline = document.Status switch
        {
            DocumentStatus.Unreadable => $"not read in full; {Counts(counts)}",
            DocumentStatus.Undecided => "no findings, but not everything could be decided",
            _ => Counts(counts),
        };
        return hidden > 0 ? string.Create(CultureInfo.InvariantCulture, $"{headline} ({hidden} not listed)") : headline;
    }

    private static string Counts(ReportTotals totals) =>
        $"{PlainText.Count(totals.Errors, "error")}, {PlainText.Count(totals.Warnings, "warning")}, {PlainText.Count(totals.Notes, "note")}";

    private static string Coverage(CheckResult result)
    {
        var (passed, notApplicable, undecided) = ReportTotals.Rules(result);
        return string.Create(CultureInfo.InvariantCulture, $"{PlainText.Count(passed, "rule")} passed, {notApplicable} had nothing to look at, {undecided} undecided.");
    }

    private static string Place(Finding finding) =>
        finding.Line is { } line ? string.Create(CultureInfo.InvariantCulture, $":{line}:{finding.Column ?? 1}") : "";

    private void Line(string text) => output.Write(text + "\n");
}
