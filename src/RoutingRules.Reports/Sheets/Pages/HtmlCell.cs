using System.Text;
using RoutingRules.Reports.Sheets.Flow;

namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>The lines of a cell in HTML: below one another, or as one text.</summary>
internal static class HtmlCell
{
    private const double BarWidth = 24;

    /// <summary>Lines below one another; marks that follow each other stand on one line.</summary>
    public static string Stacked(IReadOnlyList<PageLine> lines)
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

    /// <summary>Lines as one text with dots between; what is ticked keeps a line of its own.</summary>
    public static string Joined(IReadOnlyList<PageLine> lines)
    {
        var cell = new StringBuilder();
        var isOpen = false;
        for (var i = 0; i < lines.Count; i++)
        {
            var line = lines[i];
            if (line.Style == PageLineStyle.Tick)
            {
                cell.Append(isOpen ? "</p>" : "").Append("<p").Append(Class(line.Style)).Append(Content(line)).Append("</p>");
                isOpen = false;
                continue;
            }

            cell.Append(
                !isOpen ? "<p>"
                : IsMark(line) || IsMark(lines[i - 1]) ? " "
                : PageSet.Dot
            );
            cell.Append(line.Style == PageLineStyle.Strong ? $"<b class=\"strong\">{Content(line)}</b>" : Content(line));
            isOpen = true;
        }

        return cell.Append(isOpen ? "</p>" : "").ToString();
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
            PageLineStyle.Note => $"<small>{HtmlText.Line(line.Text)}</small>",
            _ => HtmlText.Line(line.Text),
        };

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
