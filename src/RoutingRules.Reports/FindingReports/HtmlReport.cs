using System.Globalization;
using System.Text;
using RoutingRules.Assignment;
using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.FindingReports;

/// <summary>Writes what checking documents came to as one HTML file for screen and paper.</summary>
/// <remarks>HTML5 that is also well-formed XML: no scripts, no fonts or pictures from elsewhere, black on white like the sheets. LF only.</remarks>
internal sealed class HtmlReport : ReportWriter
{
    // No '<' and no '&' in here: the file must also parse as XML.
    private const string Css = """
        section { break-before: auto; }
        section + section { break-before: auto; }
        h1 { font-size: 25pt; line-height: 1.15; }
        h2 { font-size: 17pt; }
        table { margin-top: 3mm; }
        .line { width: 20mm; font-variant-numeric: tabular-nums; }
        .rule { width: 34mm; }
        .until { width: 24mm; }
        pre { white-space: pre-wrap; font: 10pt/1.3 monospace; margin: 2mm 0 0; }
        .coverage p { margin-top: 1.5mm; }

        """;

    private readonly StreamWriter writer;
    private readonly ReportOptions options;
    private readonly Coverage coverage;
    private ReportTotals totals;

    public HtmlReport(Stream output, ReportOptions options)
    {
        this.options = options;
        coverage = new Coverage(options.Rules);
        writer = new StreamWriter(output, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.Write("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
        writer.Write("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n<title>Check of the patch</title>\n");
        writer.Write($"<style>\n{HtmlStyle.Css}{Css}</style>\n</head>\n<body>\n<section>\n<h1>Check of the patch</h1>\n</section>\n");
    }

    public override void Add(AssignmentResult result, ValueList<ObjectiveLevel> order)
    {
        using var text = new StringWriter(CultureInfo.InvariantCulture) { NewLine = "\n" };
        AssignmentTextReport.Write(result, text, order);
        var lines = text.ToString().TrimEnd('\n').Split('\n').Select(HtmlText.Escape);
        writer.Write($"<section>\n<h2>What was assigned</h2>\n<pre>{string.Join('\n', lines)}</pre>\n</section>\n");
    }

    public override void Add(DocumentCheck document)
    {
        ArgumentNullException.ThrowIfNull(document);
        totals.Add(document);
        coverage.Add(document.Result);
        var view = new ReportView(document, options.NamesOf(document));
        writer.Write($"<section>\n<h2>{HtmlText.Isolate(document.Path)}</h2>\n<p>{HtmlText.Escape(view.Headline)}</p>\n");
        foreach (var table in view.Tables)
        {
            Write(table);
        }

        writer.Write("</section>\n");
        writer.Flush();
    }

    public override void Finish()
    {
        writer.Write("<section class=\"coverage\">\n");
        if (totals.Documents > 0)
        {
            writer.Write("<h2>What was looked at</h2>\n");
            foreach (var sentence in coverage.Sentences().Prepend(ReportView.Totals(totals)))
            {
                writer.Write($"<p>{HtmlText.Escape(sentence)}</p>\n");
            }
        }

        writer.Write($"<p><b>{HtmlText.Escape(ReportView.Caution)}</b></p>\n</section>\n</body>\n</html>\n");
        writer.Flush();
    }

    protected override void Dispose(bool disposing)
    {
        writer.Dispose();
        base.Dispose(disposing);
    }

    private void Write(ReportTable table)
    {
        writer.Write("<table>\n<colgroup>");
        foreach (var column in table.Columns)
        {
            writer.Write($"<col{Class(column)}/>");
        }

        writer.Write(
            $"</colgroup>\n<thead>\n<tr class=\"name\"><th colspan=\"{SheetWords.Number(table.Columns.Length)}\" "
                + $"scope=\"colgroup\">{table.Title}</th></tr>\n<tr>"
        );
        foreach (var column in table.Columns)
        {
            writer.Write($"<th scope=\"col\">{column}</th>");
        }

        writer.Write("</tr>\n</thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            writer.Write($"<tr>{string.Concat(row.Select(cell => $"<td>{HtmlText.Isolate(cell)}</td>"))}</tr>\n");
        }

        writer.Write("</tbody>\n</table>\n");
    }

    private static string Class(string column) =>
        column switch
        {
            "Line" => " class=\"line\"",
            "Rule" => " class=\"rule\"",
            "Until" => " class=\"until\"",
            _ => "",
        };
}
