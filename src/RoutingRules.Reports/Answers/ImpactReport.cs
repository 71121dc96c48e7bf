using System.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>
/// Writes what each loss does to a show for people: a ranked table, then a fallback card for each device, link and supply whose loss is heard.
/// </summary>
/// <remarks>Every card carries the cautions. The same answer gives the same text; LF only. Thread safe.</remarks>
public static class ImpactReport
{
    /// <summary>Plain text for terminals.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="show">The show that was asked about, for names.</param>
    /// <param name="names">What points are called; null for as the document calls them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Text(ImpactAnswer answer, Show show, PanelNames? names = null)
    {
        var set = Pages(answer, show, names);
        var output = new StringBuilder();
        foreach (var page in set.Pages)
        {
            output.Append(output.Length > 0 ? "\n" : "").Append('=', TextSheetWriter.LineLength).Append('\n');
            TextSheetWriter.Wrap(output, "", [string.Join(PageSet.Dot, set.Meta.Prepend(set.Title)), page.Heading]);
            output.Append('=', TextSheetWriter.LineLength).Append('\n');
            TextSheetWriter.Wrap(output, "", page.Facts);
            output.Append('\n').Append(PageLayout.CautionsTitle).Append('\n');
            TextSheetWriter.Wrap(output, "- ", SheetWords.Cautions);
            TextSheetWriter.WriteTables(output, page);
        }

        return output.ToString();
    }

    /// <summary>Markdown with tables; texts of the document are escaped.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="show">The show that was asked about, for names.</param>
    /// <param name="names">What points are called; null for as the document calls them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Markdown(ImpactAnswer answer, Show show, PanelNames? names = null) => MarkdownSheetWriter.Write(Pages(answer, show, names));

    /// <summary>
    /// One HTML file for screen and paper, in the look of the sheets: no scripts, black on white, each card on a page of its own, A4 and Letter.
    /// </summary>
    /// <param name="answer">The answer.</param>
    /// <param name="show">The show that was asked about, for names.</param>
    /// <param name="names">What points are called; null for as the document calls them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Html(ImpactAnswer answer, Show show, PanelNames? names = null) => HtmlSheetWriter.Write(Pages(answer, show, names));

    private static PageSet Pages(ImpactAnswer answer, Show show, PanelNames? names)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(show);
        var head = new SheetHead
        {
            Title = show.Title,
            Venue = show.Venue,
            Date = show.Date,
            Revision = show.Revision,
            Code = ContentCode.Of(show),
            View = SheetView.House,
        };
        var set = new PageSet
        {
            Title = head.Title,
            Meta = PageLayout.Meta(head).ToValueList(),
            Code = head.Code,
            Cautions = SheetWords.Cautions,
            RepeatsCautions = true,
            Pages = ImpactPages.Pages(answer, show),
        };
        return NamedPages.Of(set, names ?? PanelNames.Ids);
    }
}
