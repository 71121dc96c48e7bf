using System.Globalization;
using System.Text;
using RoutingRules.Assignment;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reports.Names;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes what checking documents came to, for people.</summary>
/// <remarks>
/// Causes come first, each with the findings that it explains.
/// Other findings are grouped by gravity, what can hurt ears first, then by severity and by rule; each has its place as <c>file:line:column</c>, and the
/// remedy stands once for each rule.
/// Lines end with LF; the same documents give the same text. Characters that could steer a terminal are written out. Not thread safe.
/// </remarks>
public sealed class TextReport : ReportWriter
{
    private readonly TextWriter output;
    private readonly Severity lowest;
    private readonly bool isOwner;
    private readonly Coverage coverage;
    private readonly ReportOptions options = new();
    private PanelNames names = PanelNames.Ids;
    private ReportTotals totals;
    private bool endsBlank;

    /// <summary>A report.</summary>
    /// <param name="output">Where it is written; stays open.</param>
    /// <param name="lowest">Findings milder than this are counted, not listed; above <see cref="Severity.Note"/> clean documents are not listed either.</param>
    /// <exception cref="ArgumentNullException"><paramref name="output"/> is null.</exception>
    public TextReport(TextWriter output, Severity lowest = Severity.Note)
    {
        ArgumentNullException.ThrowIfNull(output);
        this.output = output;
        this.lowest = lowest;
        coverage = new Coverage(default);
    }

    internal TextReport(Stream output, ReportOptions options)
    {
        this.output = new StreamWriter(output, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        isOwner = true;
        this.options = options;
        lowest = options.Lowest;
        coverage = new Coverage(options.Rules);
    }

    /// <inheritdoc/>
    public override void Add(AssignmentResult result, ValueList<ObjectiveLevel> order)
    {
        AssignmentTextReport.Write(result, output, order);
        Line("");
    }

    /// <inheritdoc/>
    public override void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        Write(document);
        output.Flush();
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (isOwner)
        {
            output.Dispose();
        }

        base.Dispose(disposing);
    }

    private void Write(DocumentCheck document)
    {
        totals.Add(document);
        coverage.Add(document.Result);
        var isExcused = !document.Waived.IsEmpty || !document.Known.IsEmpty || !document.Gone.IsEmpty;
        if (document.Status == DocumentStatus.Clean && !isExcused)
        {
            if (lowest == Severity.Note)
            {
                Line($"{PlainText.Show(document.Path)}: clean. {CoverageOf(document.Result)}");
            }

            return;
        }

        Line($"{PlainText.Show(document.Path)}: {Headline(document)}");
        names = options.NamesOf(document);
        if (FindingSection.CountsByRule(document) is { } counts)
        {
            Line($"  {counts}");
        }

        var titles = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var rule in document.Result.Rules)
        {
            titles.TryAdd(rule.Descriptor.Id, rule.Descriptor.Title);
        }

        var causes = ToldCause.Of(document);
        foreach (var line in CauseText.Lines(causes, document, lowest))
        {
            Line(line);
        }

        if (causes.Exists(static cause => !cause.Offered.Cause.Repair.Edits.IsEmpty))
        {
            Line("");
            Line("  To have a repair made: routing-rules fix FILE --cause NUMBER.");
        }

        var told = new HashSet<(string Rule, string Remedy)>();
        var left = ToldCause.Unexplained(document, causes);
        foreach (var section in FindingSection.Of(document, left.Where(finding => finding.Severity >= lowest)))
        {
            WriteFindings(document, section, titles, told);
        }

        WriteExcused(document, titles);
        WriteUndecided(document.Result);
        names = PanelNames.Ids;
        Line("");
        if (document.Result.WasRead)
        {
            Line($"  {(document.Result.Findings.IsEmpty ? "" : $"{Counts(ReportTotals.Of(document))}. ")}{CoverageOf(document.Result)}");
            Line("");
        }
    }

    /// <summary>Writes the totals when there was more than one document, then what was looked at and what not.</summary>
    public override void Finish()
    {
        if (totals.Documents > 1)
        {
            var others = totals.Documents - totals.Clean - totals.Unreadable;
            Line(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{totals.Documents} documents: {totals.Clean} clean, {others} with something to look at, {totals.Unreadable} unreadable; {Counts(totals)}."
                )
            );
        }

        if (totals.Documents > 0 && lowest == Severity.Note)
        {
            if (!endsBlank)
            {
                Line("");
            }

            foreach (var sentence in coverage.Sentences())
            {
                Line(sentence);
            }
        }

        output.Flush();
    }

    private void WriteFindings(DocumentCheck document, FindingSection section, Dictionary<string, string> titles, HashSet<(string Rule, string Remedy)> told)
    {
        Line("");
        Line(section.Title);
        foreach (var rule in section.Findings.GroupBy(finding => (finding.Rule, Named: section.Rule(finding))))
        {
            Line("");
            Line($"  {rule.Key.Named}{(titles.TryGetValue(rule.Key.Rule, out var title) ? $": {title}" : "")}");
            foreach (var remedy in rule.GroupBy(finding => finding.Remedy, StringComparer.Ordinal))
            {
                foreach (var finding in remedy)
                {
                    Line($"    {PlainText.Place(PlainText.Show(document.PlacePath), finding)}: {PlainText.Show(finding.Message)}");
                }

                if (remedy.Key.Length > 0 && told.Add((rule.Key.Rule, remedy.Key)))
                {
                    Line($"    What to do: {PlainText.Show(remedy.Key)}");
                }
            }
        }
    }

    private void WriteExcused(DocumentCheck document, Dictionary<string, string> titles)
    {
        if (!document.Waived.IsEmpty)
        {
            Line("");
            Line("Waived");
        }

        foreach (var rule in document.Waived.GroupBy(waived => (waived.Finding.Rule, waived.Finding.Name)))
        {
            Line("");
            Line($"  {rule.Key.Rule} {rule.Key.Name}{(titles.TryGetValue(rule.Key.Rule, out var title) ? $": {title}" : "")}");
            foreach (var (finding, waiver) in rule.Select(waived => (waived.Finding, waived.Waiver)))
            {
                Line($"    {PlainText.Place(PlainText.Show(document.PlacePath), finding)}: {PlainText.Show(finding.Message)}");
                Line($"    Waived by {PlainText.Show(waiver.Owner)} until {PlainText.Day(waiver.Expires)}: {PlainText.Show(waiver.Reason)}");
            }
        }

        if (!document.Known.IsEmpty || !document.Gone.IsEmpty)
        {
            Line("");
            Line(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Baseline: {PlainText.Count(document.Known.Count, "known finding")} not counted, {document.Gone.Count} no longer found."
                )
            );
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
            Line(
                subject.Rule == DocumentCheck.EveryRule
                    ? $"  {PlainText.Show(subject.Reason)}"
                    : $"  {subject.Rule}, {PlainText.Show(subject.Subject)}: {PlainText.Show(subject.Reason)}"
            );
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
            DocumentStatus.Clean => "clean",
            _ => Counts(counts),
        };
        headline += document.Waived.IsEmpty ? "" : string.Create(CultureInfo.InvariantCulture, $"; {document.Waived.Count} waived");
        headline += document.Known.IsEmpty ? "" : string.Create(CultureInfo.InvariantCulture, $"; {document.Known.Count} known");
        return hidden > 0 ? string.Create(CultureInfo.InvariantCulture, $"{headline} ({hidden} not listed)") : headline;
    }

    private static string Counts(ReportTotals totals) =>
        $"{PlainText.Count(totals.Errors, "error")}, {PlainText.Count(totals.Warnings, "warning")}, {PlainText.Count(totals.Notes, "note")}";

    private static string CoverageOf(CheckResult result)
    {
        var (passed, notApplicable, undecided) = ReportTotals.Rules(result);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{PlainText.Count(passed, "rule")} passed, {notApplicable} had nothing to look at, {undecided} undecided."
        );
    }

    private void Line(string text)
    {
        endsBlank = text.Length == 0;
        output.Write(names.In(text) + "\n");
    }
}
