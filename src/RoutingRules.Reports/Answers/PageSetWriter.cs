using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes pages as plain text, Markdown, or HTML that prints.</summary>
internal static class PageSetWriter
{
    public static string Write(PageSet set, PageFormat format) =>
        format switch
        {
            PageFormat.Html => HtmlSheetWriter.Write(set),
            PageFormat.Markdown => MarkdownSheetWriter.Write(set),
            _ => TextSheetWriter.Write(set),
        };
}
