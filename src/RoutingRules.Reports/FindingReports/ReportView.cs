using System.Globalization;
using RoutingRules.Diagnosis;
using RoutingRules.Documents.Text;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Reports.Names;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>A checked document as a headline and tables, the same for every format that people read on a page.</summary>
internal sealed class ReportView
{
    public const string Caution = "A clean report is a statement about the document, not about the room.";

    private static readonly string[] FindingColumns = ["Line", "Rule", "What is wrong", "What to do"];
    private static readonly string[] CauseColumns = ["Cause", "What is wrong", "What to do", "How sure"];
    private static readonly string[] ExplainedColumns = ["Line", "Rule", "What is wrong", "Cause"];
    private static readonly string[] WaivedColumns = ["Line", "Rule", "What is wrong", "Why it is waived", "Owner", "Until"];
    private static readonly string[] GoneColumns = ["Rule", "What it was about"];
    private static readonly string[] UndecidedColumns = ["Rule", "About", "Why"];

    private readonly PanelNames names;

    public ReportView(DocumentCheck document, PanelNames names)
    {
        this.names = names;
        Headline = $"{HeadlineOf(document)} {FindingSection.CountsByRule(document)}".TrimEnd();
        var causes = ToldCause.Of(document);
        Add(
            "Causes",
            CauseColumns,
            causes.Select(cause =>
                new[] { Number(cause), $"{cause.Title}.", $"{cause.Orders}. {cause.Offered.Cause.Repair.Caution}".TrimEnd(), Sureness(cause) }
            )
        );
        Add("Explained by a cause", ExplainedColumns, causes.SelectMany(cause => cause.Findings.Select(finding => Row(finding, Name(finding), Number(cause)))));
        var left = ToldCause.Unexplained(document, causes);
        foreach (var section in FindingSection.Of(document, left))
        {
            Add(section.Title, FindingColumns, section.Findings.Select(finding => Row(finding, section.Rule(finding), finding.Remedy)));
        }

        Add(
            "Waived",
            WaivedColumns,
            document.Waived.Select(waived =>
                Row(waived.Finding, Name(waived.Finding), waived.Waiver.Reason, waived.Waiver.Owner, PlainText.Day(waived.Waiver.Expires))
            )
        );
        Add("Known to the baseline", FindingColumns, document.Known.Select(finding => Row(finding, Name(finding), finding.Remedy)));
        Add(
            "No longer found",
            GoneColumns,
            document.Gone.Select(gone => new[] { gone.Rule, string.Join(", ", gone.Entities.Select(entity => $"{entity.Role} {entity.Id}")) })
        );
        Add(
            "Not decided",
            UndecidedColumns,
            document.Result.Undecided.Select(subject =>
                new[] { subject.Rule == DocumentCheck.EveryRule ? "every rule" : subject.Rule, subject.Subject, subject.Reason }
            )
        );
    }

    public string Headline { get; }

    public List<ReportTable> Tables { get; } = [];

    public static string Totals(ReportTotals totals)
    {
        var sentence = string.Create(
            CultureInfo.InvariantCulture,
            $"{PlainText.Count(totals.Documents, "document")}, {totals.Clean} clean, {totals.Unreadable} unreadable: {Counts(totals)}"
        );
        return sentence + string.Create(CultureInfo.InvariantCulture, $", {totals.Waived} waived, {totals.Known} known, {totals.Gone} no longer found.");
    }

    public static string Counts(ReportTotals totals) =>
        $"{PlainText.Count(totals.Errors, "error")}, {PlainText.Count(totals.Warnings, "warning")}, {PlainText.Count(totals.Notes, "note")}";

    private static string HeadlineOf(DocumentCheck document)
    {
        var counts = Counts(ReportTotals.Of(document));
        var sentence = document.Status switch
        {
            DocumentStatus.Unreadable => $"Not read in full; {counts}.",
            DocumentStatus.Undecided => "No findings, but not everything could be decided.",
            DocumentStatus.Clean => "Clean.",
            _ => $"{counts}.",
        };
        return sentence
            + string.Create(
                CultureInfo.InvariantCulture,
                $"{(document.Waived.IsEmpty ? "" : $" {document.Waived.Count} waived.")}{(document.Known.IsEmpty ? "" : $" {document.Known.Count} known.")}"
            );
    }

    private static string Number(ToldCause cause) => cause.Number.ToString(CultureInfo.InvariantCulture);

    private static string Sureness(ToldCause cause) =>
        cause.Confidence switch
        {
            CauseConfidence.Only => "No other repair does as much.",
            CauseConfidence.Tie => "Another repair does as well.",
            _ => "Not everything was tried.",
        };

    private static string Name(Finding finding) => $"{finding.Rule} {finding.Name}";

    private static string[] Row(Finding finding, string rule, params string[] more) =>
        [finding.Line is { } line ? string.Create(CultureInfo.InvariantCulture, $"{line}:{finding.Column ?? 1}") : "", rule, finding.Message, .. more];

    private void Add(string title, string[] columns, IEnumerable<string[]> rows)
    {
        var list = rows.Select(row => Array.ConvertAll(row, cell => names.In(cell))).ToList();
        if (list.Count > 0)
        {
            Tables.Add(new ReportTable(title, columns, list));
        }
    }
}
