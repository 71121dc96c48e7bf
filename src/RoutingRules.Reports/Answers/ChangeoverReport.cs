using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Planning.Comparing;
using RoutingRules.Planning.RunningOrders;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes changeovers for people: the whole, and a card for each place.</summary>
public static class ChangeoverReport
{
    /// <summary>The changeover between two shows; LF only, the same plan gives the same text.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="comparison">What differs between the two.</param>
    /// <param name="before">The show that is played.</param>
    /// <param name="after">The show that comes.</param>
    /// <param name="format">How it is written.</param>
    /// <param name="names">What devices and points are called; null for as the documents call them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Write(ChangeoverPlan plan, ShowComparison comparison, Show before, Show after, PageFormat format, PanelNames? names = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        var pages = ChangeoverPages.Pages(plan, Name(before), Name(after), null, comparison.Hazards, (ContentCode.Of(before), ContentCode.Of(after)), names);
        return Write(after.Title, after.Venue, after.Date, after.Revision, pages, format, names);
    }

    /// <summary>Everything about a running order; LF only, the same plan gives the same text.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="format">How it is written.</param>
    /// <param name="names">What devices and points are called; null for as the documents call them.</param>
    /// <exception cref="ArgumentNullException"><paramref name="plan"/> is null.</exception>
    public static string Write(RunningOrderPlan plan, PageFormat format, PanelNames? names = null)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Write(plan.Run.Title, plan.Run.Venue, plan.Run.Date, plan.Run.Revision, RunningOrderPages.Pages(plan, names), format, names);
    }

    private static string Name(Show show) => show.Revision is null ? show.Title : $"{show.Title} (revision {show.Revision})";

    private static string Write(string title, string? venue, DateOnly? date, string? revision, List<Page> pages, PageFormat format, PanelNames? names)
    {
        var meta = new[] { venue, date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), revision is null ? "no revision" : $"revision {revision}" };
        return PageSetWriter.Write(
            new PageSet
            {
                Title = title,
                Meta = meta.Where(part => !string.IsNullOrEmpty(part)).Select(part => part!).ToValueList(),
                Cautions = SheetWords.Cautions,
                Pages = pages,
            },
            format,
            names
        );
    }
}
