using System.Globalization;
using System.Text;
using RoutingRules.Assignment;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes what checking documents came to as Markdown with tables, for people.</summary>
/// <remarks>Texts of documents are escaped, so that they show as written. LF only.</remarks>
internal sealed class MarkdownReport : ReportWriter
{
    private readonly StreamWriter writer;
    private readonly ReportOptions options;
    private readonly Coverage coverage;
    private ReportTotals totals;

    public MarkdownReport(Stream output, ReportOptions options)
    {
        this.options = options;
        coverage = new Coverage(options.Rules);
        writer = new StreamWriter(output, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.Write("# Check of the patch\n");
    }

    public override void Add(AssignmentResult result, ValueList<ObjectiveLevel> order)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        AssignmentTextReport.Write(result, text, order);
        writer.Write("\n## What was assigned\n\n");
        foreach (var line in text.ToString().TrimEnd('\n').Split('\n'))
        {
            // Four blanks make a block of text that shows as written; nothing in it can end it.
            writer.Write(line.Length == 0 ? "\n" : $"    {line}\n");
        }
    }

    public override void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        totals.Add(document);
        coverage.Add(document.Result);
        var view = new ReportView(document, options.NamesOf(document));
        writer.Write($"\n## {Text(document.Path)}\n\n{Text(view.Headline)}\n");
        foreach (var table in view.Tables)
        {
            writer.Write(
                $"\n### {table.Title}\n\n| {string.Join(" | ", table.Columns)} |\n|{string.Concat(Enumerable.Repeat("---|", table.Columns.Length))}\n"
            );
            foreach (var row in table.Rows)
            {
                writer.Write($"| {string.Join(" | ", row.Select(Text))} |\n");
            }
        }

        writer.Flush();
    }

    public override void Finish()
    {
        if (totals.Documents > 0)
        {
            writer.Write("\n## What was looked at\n");
            foreach (var sentence in coverage.Sentences().Prepend(ReportView.Totals(totals)))
            {
                writer.Write($"\n{Text(sentence)}\n");
            }
        }

        writer.Write($"\n{Text(ReportView.Caution)}\n");
        writer.Flush();
    }

    protected override void Dispose(bool disposing)
    {
        writer.Dispose();
        base.Dispose(disposing);
    }

    private static string Text(string text) => MarkdownText.Escape(text);
}
