using System.Globalization;
using System.Text;
using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Contents;
using RoutingRules.Reports.Sheets.Flow;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>Writes sheets as one HTML file for screen and paper.</summary>
/// <remarks>
/// HTML5 that is also well-formed XML: no scripts, no fonts or pictures from elsewhere, black on white, drawings as SVG inside. Each part starts a new
/// page; show, revision, date, view and code head every sheet of paper, and a table that goes on repeats its own head. It fits A4 and Letter. LF only.
/// Thread safe.
/// </remarks>
public static class HtmlSheetWriter
{
    /// <summary>Writes sheets.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static string Write(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        return Write(PageLayout.Set(sheet, draws: true));
    }

    internal static string Write(PageSet set)
    {
        var output = new StringBuilder();
        output.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
        output.Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
        output.Append(CultureInfo.InvariantCulture, $"<title>{HtmlText.Escape(string.Join(", ", set.Meta.Prepend(set.Title)))}</title>\n");
        output.Append(CultureInfo.InvariantCulture, $"<style>\n{HtmlStyle.Css}</style>\n</head>\n<body{(set.IsLargeType ? " class=\"large\"" : "")}>\n");
        for (var i = 0; i < set.Pages.Count; i++)
        {
            WritePage(output, set, set.Pages[i], i == 0);
        }

        return output.Append("</body>\n</html>\n").ToString();
    }

    /// <summary>A page is a table of one cell, so that every browser repeats its head on each sheet of paper.</summary>
    private static void WritePage(StringBuilder output, PageSet set, Page page, bool isFirst)
    {
        var show = isFirst ? "h1" : "p";
        output
            .Append(!isFirst && page.SharesPaper ? "<section class=\"short\">\n" : "<section>\n")
            .Append("<table class=\"page\" role=\"presentation\">\n<thead><tr><td>\n<header>\n<div>\n");
        output.Append(CultureInfo.InvariantCulture, $"<{show} class=\"show\">{HtmlText.Isolate(set.Title)}</{show}>\n");
        output.Append(CultureInfo.InvariantCulture, $"<p class=\"meta\">{string.Join(PageSet.Dot, set.Meta.Select(HtmlText.Isolate))}</p>\n");
        output.Append(
            CultureInfo.InvariantCulture,
            $"<h2>{HtmlText.Isolate(page.Title)}{(page.Aside is null ? "" : $" <span class=\"aside\">{HtmlText.Isolate(page.Aside)}</span>")}</h2>\n"
        );
        output.Append("</div>\n");
        if ((page.Code ?? set.Code) is { } code)
        {
            output.Append(CultureInfo.InvariantCulture, $"<p class=\"code\"><span>sheet code</span> <b>{HtmlText.Escape(code)}</b></p>\n");
        }

        output.Append("</header>\n</td></tr></thead>\n<tbody><tr><td>\n");
        foreach (var fact in page.Facts)
        {
            output.Append(CultureInfo.InvariantCulture, $"<p>{HtmlText.Line(fact)}</p>\n");
        }

        // The head of each sheet of paper names the view; what it means is said where all cautions are.
        if (set.ViewNote is { } note && page.HasAllCautions)
        {
            output.Append(CultureInfo.InvariantCulture, $"<p class=\"view\">{HtmlText.Escape(note)}</p>\n");
        }

        WriteCautions(output, set.Cautions, page.HasAllCautions);
        foreach (var table in page.Tables)
        {
            WriteTable(output, table);
        }

        foreach (var flow in page.Flows)
        {
            output.Append(
                CultureInfo.InvariantCulture,
                $"<figure>\n<figcaption>{HtmlText.Isolate(flow.Title)} <small>{FlowSvg.Legend}</small></figcaption>\n{FlowSvg.Element(flow)}</figure>\n"
            );
        }

        output.Append("</td></tr></tbody>\n</table>\n</section>\n");
    }

    private static void WriteCautions(StringBuilder output, ValueList<string>? cautions, bool all)
    {
        if (cautions is not null && !all)
        {
            output.Append(CultureInfo.InvariantCulture, $"<aside class=\"cautions\"><p>{HtmlText.Escape(SheetWords.CautionInShort)}</p></aside>\n");
        }
        else if (cautions is { } list)
        {
            output.Append(
                CultureInfo.InvariantCulture,
                $"<aside class=\"cautions\">\n<h3>{PageLayout.CautionsTitle}</h3>\n<ul>\n"
                    + $"{string.Concat(list.Select(caution => $"<li>{HtmlText.Escape(caution)}</li>\n"))}</ul>\n</aside>\n"
            );
        }
    }

    private static void WriteTable(StringBuilder output, PageTable table)
    {
        var total = table.Columns.Sum(column => column.Share);
        output.Append(CultureInfo.InvariantCulture, $"<table{(table.HasBigFirst ? " class=\"points\"" : "")}>\n<colgroup>");
        foreach (var column in table.Columns)
        {
            output.Append(CultureInfo.InvariantCulture, $"<col style=\"width:{100.0 * column.Share / total:0.##}%\"/>");
        }

        output.Append("</colgroup>\n<thead>\n");
        output.Append(
            CultureInfo.InvariantCulture,
            $"<tr class=\"name\"><th colspan=\"{table.Columns.Length}\" scope=\"colgroup\">{HtmlText.Isolate(table.Title)}</th></tr>\n<tr>"
        );
        foreach (var column in table.Columns)
        {
            output.Append(CultureInfo.InvariantCulture, $"<th scope=\"col\">{HtmlText.Isolate(column.Heading)}</th>");
        }

        output.Append("</tr>\n</thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            WriteRow(output, row, table.Columns.Length);
        }

        output.Append("</tbody>\n</table>\n");
    }

    private static void WriteRow(StringBuilder output, PageRow row, int columns)
    {
        if (row.IsBlank)
        {
            output.Append("<tr class=\"blank\">").Insert(output.Length, "<td></td>", columns).Append("</tr>\n");
        }
        else if (row.Across is not null)
        {
            output.Append(
                row.IsHeading
                    ? $"<tr class=\"stop\"><th colspan=\"{SheetWords.Number(columns)}\" scope=\"colgroup\">{HtmlText.Line(row.Across)}</th></tr>\n"
                    : $"<tr><td colspan=\"{SheetWords.Number(columns)}\">{HtmlText.Line(row.Across)}</td></tr>\n"
            );
        }
        else
        {
            output.Append(row.Cells.Any(cell => cell.Any(line => line.Style == PageLineStyle.Change)) ? "<tr class=\"changed\">" : "<tr>");
            for (var i = 0; i < row.Cells.Length; i++)
            {
                output.Append(i == 0 ? "<th scope=\"row\">" : "<td>").Append(Cell(row.Cells[i])).Append(i == 0 ? "</th>" : "</td>");
            }

            output.Append("</tr>\n");
        }
    }

    /// <summary>Marks that follow each other stand on one line.</summary>
    private static string Cell(List<PageLine> lines)
    {
        var cell = new StringBuilder();
        for (var i = 0; i < lines.Count; i++)
        {
            var follows = i > 0 && IsMark(lines[i]) && IsMark(lines[i - 1]);
            cell.Append(
                    follows ? " "
                    : i > 0 ? "</p><p"
                    : "<p"
                )
                .Append(follows ? "" : Class(lines[i].Style))
                .Append(Content(lines[i]));
        }

        return cell.Append(lines.Count > 0 ? "</p>" : "").ToString();
    }

    private static bool IsMark(PageLine line) => line.Style is PageLineStyle.Mark or PageLineStyle.Stop;

    private static string Class(PageLineStyle style) =>
        style switch
        {
            PageLineStyle.Tick => " class=\"check\">",
            PageLineStyle.Strong => " class=\"strong\">",
            _ => ">",
        };

    private static string Content(PageLine line) =>
        line.Style switch
        {
            PageLineStyle.Tick => $"<span class=\"box\"></span>{(line.Text.Length == 0 ? "" : " " + HtmlText.Line(line.Text))}",
            PageLineStyle.Mark => $"<span class=\"mark\">{HtmlText.Line(line.Text)}</span>",
            PageLineStyle.Change => $"<span class=\"change\">\u25b6 {HtmlText.Line(line.Text)}</span>",
            PageLineStyle.Bar => $"{Bar(line)} {HtmlText.Line(line.Text)}",
            PageLineStyle.Stop => $"<span class=\"mark dead\">{HtmlText.Line(line.Text)}</span>",
            _ => HtmlText.Line(line.Text),
        };

    private const double BarWidth = 24;

    /// <summary>A bar with a stroke at its limit.</summary>
    private static string Bar(PageLine line)
    {
        var limit = FlowSvg.Number(1 + (line.Limit * BarWidth));
        return "<svg class=\"bar\" viewBox=\"0 0 26 6\" role=\"img\" aria-hidden=\"true\">"
            + "<rect x=\"1\" y=\"1\" width=\"24\" height=\"4\" fill=\"#fff\" stroke=\"#000\" stroke-width=\"0.4\"/>"
            + $"<rect x=\"1\" y=\"1\" width=\"{FlowSvg.Number(line.Share * BarWidth)}\" height=\"4\" fill=\"#000\"/>"
            + $"<path d=\"M{limit} 0 V6\" stroke=\"#000\" stroke-width=\"0.6\"/></svg>";
    }
}
