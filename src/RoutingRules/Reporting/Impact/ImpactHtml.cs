using System.Globalization;
using System.Text;
using RoutingRules.Reporting.Sheets;

namespace RoutingRules.Reporting;

/// <summary>Writes pages about losses as one HTML file in the look of the sheets; it is well-formed XML as well.</summary>
internal static class ImpactHtml
{
    public static string Write(List<Page> pages, SheetHead head)
    {
        var output = new StringBuilder();
        var meta = string.Join(" \u00b7 ", PageLayout.Meta(head).Select(HtmlText.Isolate));
        output.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
        output.Append(CultureInfo.InvariantCulture, $"<title>{HtmlText.Escape($"{head.Title}, losses, {string.Join(", ", PageLayout.Meta(head))}")}</title>\n<style>\n{HtmlStyle.Css}</style>\n</head>\n<body>\n");
        for (var i = 0; i < pages.Count; i++)
        {
            var page = pages[i];
            var show = i == 0 ? "h1" : "p";
            output.Append(CultureInfo.InvariantCulture, $"<section>\n<header>\n<{show} class=\"show\">{HtmlText.Isolate(head.Title)}</{show}>\n<p class=\"meta\">{meta}</p>\n");
            output.Append(CultureInfo.InvariantCulture, $"<h2>{HtmlText.Isolate(page.Title)}{(page.Aside is null ? "" : $" <span class=\"aside\">{HtmlText.Isolate(page.Aside)}</span>")}</h2>\n");
            foreach (var fact in page.Facts)
            {
                output.Append(CultureInfo.InvariantCulture, $"<p>{HtmlText.Isolate(fact)}</p>\n");
            }

            output.Append(CultureInfo.InvariantCulture, $"</header>\n<aside class=\"cautions\">\n<h3>{PageLayout.CautionsTitle}</h3>\n<ul>\n");
            foreach (var caution in SheetWords.Cautions)
            {
                output.Append(CultureInfo.InvariantCulture, $"<li>{HtmlText.Escape(caution)}</li>\n");
            }

            output.Append("</ul>\n</aside>\n");
            var running = string.Join(" \u00b7 ", PageLayout.Running(head, page).Select(HtmlText.Isolate));
            foreach (var table in page.Tables)
            {
                WriteTable(output, table, running);
            }

            output.Append("</section>\n");
        }

        return output.Append("</body>\n</html>\n").ToString();
    }

    private static void WriteTable(StringBuilder output, PageTable table, string running)
    {
        var total = table.Columns.Sum(column => column.Share);
        output.Append(CultureInfo.InvariantCulture, $"<table{(table.HasBigFirst ? " class=\"points\"" : "")}>\n<colgroup>");
        foreach (var (_, share) in table.Columns)
        {
            output.Append(CultureInfo.InvariantCulture, $"<col style=\"width:{100.0 * share / total:0.##}%\"/>");
        }

        output.Append(CultureInfo.InvariantCulture, $"</colgroup>\n<thead>\n<tr class=\"running\"><td colspan=\"{table.Columns.Length}\">{running}</td></tr>\n");
        output.Append(CultureInfo.InvariantCulture, $"<tr class=\"name\"><th colspan=\"{table.Columns.Length}\" scope=\"colgroup\">{HtmlText.Isolate(table.Title)}</th></tr>\n<tr>");
        foreach (var (heading, _) in table.Columns)
        {
            output.Append(heading.Length == 0 ? "<td></td>" : $"<th scope=\"col\">{HtmlText.Isolate(heading)}</th>");
        }

        output.Append("</tr>\n</thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            output.Append("<tr>");
            for (var i = 0; i < row.Cells.Length; i++)
            {
                var content = string.Concat(row.Cells[i].Select(Line));
                output.Append(i == 0 ? $"<th scope=\"row\">{content}</th>" : $"<td>{content}</td>");
            }

            output.Append("</tr>\n");
        }

        output.Append("</tbody>\n</table>\n");
    }

    private static string Line(PageLine line) => line.Style switch
    {
        PageLineStyle.Tick => "<p class=\"check\"><span class=\"box\"></span></p>",
        PageLineStyle.Strong => $"<p class=\"strong\">{HtmlText.Isolate(line.Text)}</p>",
        PageLineStyle.Mark => $"<p><span class=\"mark\">{HtmlText.Isolate(line.Text)}</span></p>",
        _ => $"<p>{HtmlText.Isolate(line.Text)}</p>",
    };
}
