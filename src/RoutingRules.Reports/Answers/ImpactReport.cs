using System.Globalization;
using System.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Losses;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes what each loss does to a show for people: a ranked table, then a fallback card for each device, link and supply whose loss is heard.</summary>
/// <remarks>Every card carries the cautions. The same answer gives the same text; LF only. Thread safe.</remarks>
public static class ImpactReport
{
    /// <summary>Plain text for terminals.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="show">The show that was asked about, for names.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Text(ImpactAnswer answer, Show show)
    {
        var output = new StringBuilder();
        foreach (var page in Pages(answer, show, out var head))
        {
            output.Append(output.Length > 0 ? "\n" : "").Append('=', TextSheetWriter.LineLength).Append('\n');
            TextSheetWriter.Wrap(output, "", string.Join(" \u00b7 ", PageLayout.Meta(head).Prepend(head.Title)));
            TextSheetWriter.Wrap(output, "", page.Aside is null ? page.Title : $"{page.Title} ({page.Aside})");
            output.Append('=', TextSheetWriter.LineLength).Append('\n');
            foreach (var fact in page.Facts)
            {
                TextSheetWriter.Wrap(output, "", fact);
            }

            output.Append('\n').Append(PageLayout.CautionsTitle).Append('\n');
            foreach (var caution in SheetWords.Cautions)
            {
                TextSheetWriter.Wrap(output, "- ", caution);
            }

            foreach (var table in page.Tables)
            {
                output.Append('\n');
                TextTable.Write(output, table);
            }
        }

        return output.ToString();
    }

    /// <summary>Markdown with tables; texts of the document are escaped.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="show">The show that was asked about, for names.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Markdown(ImpactAnswer answer, Show show)
    {
        var output = new StringBuilder();
        var pages = Pages(answer, show, out var head);
        output.Append(CultureInfo.InvariantCulture, $"# {MarkdownText.Escape(head.Title)}\n\n{MarkdownText.Escape(string.Join(" \u00b7 ", PageLayout.Meta(head)))}\n");
        foreach (var page in pages)
        {
            output.Append(CultureInfo.InvariantCulture, $"\n---\n\n## {MarkdownText.Escape(page.Title)}{(page.Aside is null ? "" : $" ({MarkdownText.Escape(page.Aside)})")}\n");
            foreach (var fact in page.Facts)
            {
                output.Append(CultureInfo.InvariantCulture, $"\n{MarkdownText.Escape(fact)}\n");
            }

            output.Append(CultureInfo.InvariantCulture, $"\n### {PageLayout.CautionsTitle}\n\n");
            foreach (var caution in SheetWords.Cautions)
            {
                output.Append(CultureInfo.InvariantCulture, $"- {MarkdownText.Escape(caution)}\n");
            }

            foreach (var table in page.Tables)
            {
                MarkdownSheetWriter.WriteTable(output, table);
            }
        }

        return output.ToString();
    }

    /// <summary>One HTML file for screen and paper, in the look of the sheets: no scripts, black on white, each card on a page of its own, A4 and Letter.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="show">The show that was asked about, for names.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Html(ImpactAnswer answer, Show show)
    {
        var pages = Pages(answer, show, out var head);
        return PageSetWriter.Write(new PageSet { Title = head.Title, Meta = PageLayout.Meta(head).ToValueList(), HasCautions = true, Code = head.Code, Pages = pages }, PageFormat.Html);
    }

    private static List<Page> Pages(ImpactAnswer answer, Show show, out SheetHead head)
    {
        ArgumentNullException.ThrowIfNull(answer);
        ArgumentNullException.ThrowIfNull(show);
        head = new SheetHead
        {
            Title = show.Title,
            Venue = show.Venue,
            Date = show.Date,
            Revision = show.Revision,
            Code = ContentCode.Of(show),
            View = SheetView.House,
        };
        return ImpactPages.Pages(answer, show);
    }
}
