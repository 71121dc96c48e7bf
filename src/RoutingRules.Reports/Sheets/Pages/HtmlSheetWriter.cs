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
            .Append(
                isFirst ? "<section>\n"
                : page.FollowsOn ? "<section class=\"short on\">\n"
                : page.SharesPaper ? "<section class=\"short\">\n"
                : "<section>\n"
            )
            .Append("<table class=\"page\" role=\"presentation\">\n<thead><tr><td>\n<header>\n<div>\n");
        output.Append(CultureInfo.InvariantCulture, $"<{show} class=\"show\">{HtmlText.Isolate(set.Title)}</{show}>\n");
        output.Append(
            CultureInfo.InvariantCulture,
            $"<p class=\"meta\">{string.Join(PageSet.Dot, set.Meta.Where(part => part != $"code {set.Code}").Select(HtmlText.Isolate))}</p>\n"
        );
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
        HtmlTable.Write(output, page.Tables);

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
}
