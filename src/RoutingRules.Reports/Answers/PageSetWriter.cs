using System.Globalization;
using System.Text;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes pages as plain text, Markdown, or HTML that prints.</summary>
internal static class PageSetWriter
{
    private const string Dot = " \u00b7 ";

    public static string Write(PageSet set, PageFormat format) => format switch
    {
        PageFormat.Html => Html(set),
        PageFormat.Markdown => Markdown(set),
        _ => Text(set),
    };

    private static string Text(PageSet set)
    {
        var output = new StringBuilder();
        foreach (var page in set.Pages)
        {
            if (output.Length > 0)
            {
                output.Append("\n\f");
            }

            output.Append('=', TextSheetWriter.LineLength).Append('\n');
            TextSheetWriter.Wrap(output, "", set.Title);
            if (!set.Meta.IsEmpty)
            {
                TextSheetWriter.Wrap(output, "", string.Join(Dot, set.Meta));
            }

            TextSheetWriter.Wrap(output, "", Heading(page));
            foreach (var fact in page.Facts)
            {
                TextSheetWriter.Wrap(output, "", fact);
            }

            if (set.HasCautions)
            {
                output.Append('-', TextSheetWriter.LineLength).Append('\n').Append(PageLayout.CautionsTitle).Append('\n');
                foreach (var caution in SheetWords.Cautions)
                {
                    TextSheetWriter.Wrap(output, "- ", caution);
                }
            }

            output.Append('=', TextSheetWriter.LineLength).Append('\n');
            foreach (var table in page.Tables)
            {
                output.Append('\n');
                TextTable.Write(output, table);
            }
        }

        return output.ToString();
    }

    private static string Markdown(PageSet set)
    {
        var output = new StringBuilder();
        output.Append(CultureInfo.InvariantCulture, $"# {MarkdownText.Escape(set.Title)}\n");
        if (!set.Meta.IsEmpty)
        {
            output.Append(CultureInfo.InvariantCulture, $"\n{MarkdownText.Escape(string.Join(Dot, set.Meta))}\n");
        }

        if (set.HasCautions)
        {
            output.Append(CultureInfo.InvariantCulture, $"\n### {PageLayout.CautionsTitle}\n\n");
            foreach (var caution in SheetWords.Cautions)
            {
                output.Append(CultureInfo.InvariantCulture, $"- {MarkdownText.Escape(caution)}\n");
            }
        }

        foreach (var page in set.Pages)
        {
            output.Append(CultureInfo.InvariantCulture, $"\n---\n\n## {MarkdownText.Escape(Heading(page))}\n");
            foreach (var fact in page.Facts)
            {
                output.Append(CultureInfo.InvariantCulture, $"\n{MarkdownText.Escape(fact.Trim())}\n");
            }

            foreach (var table in page.Tables)
            {
                MarkdownSheetWriter.WriteTable(output, table);
            }
        }

        return output.ToString();
    }

    private static string Html(PageSet set)
    {
        var output = new StringBuilder();
        var title = string.Join(", ", set.Meta.Prepend(set.Title));
        output.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\"/>\n");
        output.Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n");
        output.Append(CultureInfo.InvariantCulture, $"<title>{HtmlText.Escape(title)}</title>\n<style>\n{HtmlStyle.Css}</style>\n</head>\n<body>\n");
        for (var i = 0; i < set.Pages.Count; i++)
        {
            WritePage(output, set, set.Pages[i], i == 0);
        }

        return output.Append("</body>\n</html>\n").ToString();
    }

    private static void WritePage(StringBuilder output, PageSet set, Page page, bool isFirst)
    {
        var show = isFirst ? "h1" : "p";
        output.Append("<section>\n<table class=\"page\" role=\"presentation\">\n<thead><tr><td>\n<header>\n<div>\n");
        output.Append(CultureInfo.InvariantCulture, $"<{show} class=\"show\">{HtmlText.Isolate(set.Title)}</{show}>\n");
        output.Append(CultureInfo.InvariantCulture, $"<p class=\"meta\">{string.Join(Dot, set.Meta.Select(HtmlText.Isolate))}</p>\n");
        output.Append(CultureInfo.InvariantCulture, $"<h2>{HtmlText.Isolate(page.Title)}{(page.Aside is null ? "" : $" <span class=\"aside\">{HtmlText.Isolate(page.Aside)}</span>")}</h2>\n");
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

        if (set.HasCautions)
        {
            HtmlSheetWriter.WriteCautions(output, SheetWords.Cautions);
        }

        foreach (var table in page.Tables)
        {
            HtmlSheetWriter.WriteTable(output, table);
        }

        output.Append("</td></tr></tbody>\n</table>\n</section>\n");
    }

    private static string Heading(Page page) => page.Aside is null ? page.Title : $"{page.Title} ({page.Aside})";
}
