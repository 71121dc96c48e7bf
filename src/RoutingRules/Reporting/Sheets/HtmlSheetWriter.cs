using System.Globalization;
using System.Text;

namespace RoutingRules.Reporting.Sheets;

/// <summary>Writes sheets as one HTML file for screen and paper.</summary>
/// <remarks>
/// HTML5 that is also well-formed XML: no scripts, no fonts or pictures from elsewhere, black on white. Each device starts a new page; the head of
/// a table, with show, revision and code, is repeated on each page. It fits A4 and Letter. LF only. Thread safe.
/// </remarks>
public static class HtmlSheetWriter
{
    /// <summary>Writes sheets.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="sheet"/> is null.</exception>
    public static string Write(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var output = new StringBuilder();
        output.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
        output.Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
        output.Append(CultureInfo.InvariantCulture, $"<title>{HtmlText.Escape($"{sheet.Head.Title}, {string.Join(", ", PageLayout.Meta(sheet.Head))}")}</title>\n");
        output.Append(CultureInfo.InvariantCulture, $"<style>\n{HtmlStyle.Css}</style>\n</head>\n<body>\n");
        var pages = PageLayout.Pages(sheet);
        for (var i = 0; i < pages.Count; i++)
        {
            WritePage(output, sheet, pages[i], i == 0);
        }

        return output.Append("</body>\n</html>\n").ToString();
    }

    private static void WritePage(StringBuilder output, Sheet sheet, Page page, bool isFirst)
    {
        var show = isFirst ? "h1" : "p";
        output.Append("<section>\n<header>\n");
        output.Append(CultureInfo.InvariantCulture, $"<{show} class=\"show\">{HtmlText.Isolate(sheet.Head.Title)}</{show}>\n");
        output.Append(CultureInfo.InvariantCulture, $"<p class=\"meta\">{string.Join(" \u00b7 ", PageLayout.Meta(sheet.Head).Select(HtmlText.Isolate))}</p>\n");
        output.Append(CultureInfo.InvariantCulture, $"<h2>{HtmlText.Isolate(page.Title)}{(page.Aside is null ? "" : $" <span class=\"aside\">{HtmlText.Isolate(page.Aside)}</span>")}</h2>\n");
        foreach (var fact in page.Facts)
        {
            output.Append(CultureInfo.InvariantCulture, $"<p>{HtmlText.Isolate(fact)}</p>\n");
        }

        output.Append(CultureInfo.InvariantCulture, $"<p class=\"view\">{HtmlText.Escape(SheetWords.ViewNote(sheet.Head.View))}</p>\n");
        output.Append("</header>\n");
        WriteCautions(output, sheet);
        var running = string.Join(" \u00b7 ", PageLayout.Running(sheet.Head, page).Select(HtmlText.Isolate));
        foreach (var table in page.Tables)
        {
            WriteTable(output, table, running);
        }

        output.Append("</section>\n");
    }

    private static void WriteCautions(StringBuilder output, Sheet sheet)
    {
        output.Append(CultureInfo.InvariantCulture, $"<aside class=\"cautions\">\n<h3>{PageLayout.CautionsTitle}</h3>\n<ul>\n");
        foreach (var caution in sheet.Cautions)
        {
            output.Append(CultureInfo.InvariantCulture, $"<li>{HtmlText.Escape(caution)}</li>\n");
        }

        output.Append("</ul>\n</aside>\n");
    }

    internal static void WriteTable(StringBuilder output, PageTable table, string running)
    {
        var total = table.Columns.Sum(column => column.Share);
        output.Append(CultureInfo.InvariantCulture, $"<table{(table.HasBigFirst ? " class=\"points\"" : "")}>\n<colgroup>");
        foreach (var column in table.Columns)
        {
            output.Append(CultureInfo.InvariantCulture, $"<col style=\"width:{100.0 * column.Share / total:0.##}%\"/>");
        }

        output.Append("</colgroup>\n<thead>\n");
        output.Append(CultureInfo.InvariantCulture, $"<tr class=\"running\"><td colspan=\"{table.Columns.Length}\">{running}</td></tr>\n");
        output.Append(CultureInfo.InvariantCulture, $"<tr class=\"name\"><th colspan=\"{table.Columns.Length}\" scope=\"colgroup\">{HtmlText.Isolate(table.Title)}</th></tr>\n<tr>");
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
        if (row.Slots.Length > 0)
        {
            output.Append(CultureInfo.InvariantCulture, $"<tr class=\"free\"><td colspan=\"{columns}\"><div>");
            foreach (var slot in row.Slots)
            {
                output.Append(CultureInfo.InvariantCulture, $"<span class=\"slot\"><b>{HtmlText.Isolate(slot)}</b> <i>free</i></span>");
            }

            output.Append("</div></td></tr>\n");
        }
        else if (row.Across is not null)
        {
            output.Append(row.IsHeading
                ? $"<tr class=\"stop\"><th colspan=\"{SheetWords.Number(columns)}\" scope=\"colgroup\">{HtmlText.Isolate(row.Across)}</th></tr>\n"
                : $"<tr><td colspan=\"{SheetWords.Number(columns)}\">{HtmlText.Isolate(row.Across)}</td></tr>\n");
        }
        else
        {
            output.Append("<tr>");
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
            cell.Append(follows ? " " : i > 0 ? "</p><p" : "<p").Append(follows ? "" : Class(lines[i].Style)).Append(Content(lines[i]));
        }

        return cell.Append(lines.Count > 0 ? "</p>" : "").ToString();
    }

    private static bool IsMark(PageLine line) => line.Style is PageLineStyle.Mark or PageLineStyle.Stop;

    private static string Class(PageLineStyle style) => style switch
    {
        PageLineStyle.Tick => " class=\"check\">",
        PageLineStyle.Strong => " class=\"strong\">",
        _ => ">",
    };

    private static string Content(PageLine line) => line.Style switch
    {
        PageLineStyle.Tick => $"<span class=\"box\"></span>{(line.Text.Length == 0 ? "" : " " + HtmlText.Isolate(line.Text))}",
        PageLineStyle.Mark => $"<span class=\"mark\">{HtmlText.Isolate(line.Text)}</span>",
        PageLineStyle.Stop => $"<span class=\"mark dead\">{HtmlText.Isolate(line.Text)}</span>",
        _ => HtmlText.Isolate(line.Text),
    };
}
