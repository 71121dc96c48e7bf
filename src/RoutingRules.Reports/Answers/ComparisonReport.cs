using RoutingRules.Planning.Comparing;
using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Writes what differs between two shows for people.</summary>
public static class ComparisonReport
{
    /// <summary>The report; LF only, the same comparison gives the same text.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="before">What the first show is called.</param>
    /// <param name="after">What the second show is called.</param>
    /// <param name="format">How it is written.</param>
    /// <param name="names">What points are called; null for as the documents call them.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Write(ShowComparison comparison, string before, string after, PageFormat format, PanelNames? names = null)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return PageSetWriter.Write(
            new PageSet
            {
                Title = $"{before} \u2192 {after}",
                Meta = default,
                Pages = [ComparisonPages.Page(comparison, "What differs")],
            },
            format,
            names
        );
    }
}
