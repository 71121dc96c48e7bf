using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes pages as plain text, Markdown, or HTML that prints.</summary>
internal static class PageSetWriter
{
    public static string Write(PageSet set, PageFormat format, PanelNames? names)
    {
        var named = NamedPages.Of(set, names ?? PanelNames.Ids);
        return format switch
        {
            PageFormat.Html => HtmlSheetWriter.Write(named),
            PageFormat.Markdown => MarkdownSheetWriter.Write(named),
            _ => TextSheetWriter.Write(named),
        };
    }
}
