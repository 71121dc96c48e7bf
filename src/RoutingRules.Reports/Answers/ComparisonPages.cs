using RoutingRules.Documents.Text;
using RoutingRules.Model;
using RoutingRules.Planning.Comparing;
using RoutingRules.Profiles;
using RoutingRules.Reports.Sheets.Pages;
using RoutingRules.Rules;

namespace RoutingRules.Reports.Answers;

/// <summary>Lays out what differs between two shows.</summary>
internal static class ComparisonPages
{
    private const int LongestValue = 60;

    public static Page Page(ShowComparison comparison, string title)
    {
        var page = new Page { Title = title };
        if (comparison.IsEmpty)
        {
            page.Facts.Add("Nothing differs.");
            return page;
        }

        page.Facts.Add(
            $"{Count(comparison.Sinks.Count(change => change.Kind != PortKind.Sink), "output")} and "
                + $"{Count(comparison.Sinks.Count(change => change.Kind == PortKind.Sink), "channel")} (or runs of them) "
                + $"carry something else; {Count(comparison.Demands.Count(change => change.IsFeed), "feed")} and "
                + $"{Count(comparison.Demands.Count(change => !change.IsFeed), "line")} changed; "
                + $"{Count(comparison.NewFindings.Count, "new finding")}, {comparison.ResolvedFindings.Count} resolved, "
                + $"{comparison.UnchangedFindings.Count} as before."
        );
        Add(page, "Dangers of the change", Findings(comparison.Hazards));
        Add(page, "What outputs and channels carry", Sinks(comparison.Sinks));
        Add(page, "Feeds and lines", Demands(comparison.Demands));
        Add(page, "New findings", Findings(comparison.NewFindings));
        Add(page, "Findings that are gone", Findings(comparison.ResolvedFindings));
        Add(page, "Findings that both have", Findings(comparison.UnchangedFindings));
        Add(page, "Changes of the document", Entities(comparison.Entities));
        return page;
    }

    /// <summary>A table of findings.</summary>
    public static PageTable Findings(ValueList<Finding> findings) =>
        Table(
            [("Rule", 12), ("What is wrong", 88)],
            findings.Select(finding => new PageRow
            {
                Cells =
                [
                    [new PageLine(finding.Rule, PageLineStyle.Strong), new PageLine(PlainText.Word(finding.Severity), PageLineStyle.Plain)],
                    Cell(finding.Message, finding.Remedy),
                ],
            })
        );

    /// <summary>Puts a table on a page unless it is empty.</summary>
    public static void Add(Page page, string title, PageTable table)
    {
        if (table.Rows.Count > 0)
        {
            var titled = new PageTable
            {
                Title = title,
                Columns = table.Columns,
                HasBigFirst = table.HasBigFirst,
            };
            titled.Rows.AddRange(table.Rows);
            page.Tables.Add(titled);
        }
    }

    public static PageTable Table(PageColumn[] columns, IEnumerable<PageRow> rows)
    {
        var table = new PageTable { Title = "", Columns = columns };
        table.Rows.AddRange(rows);
        return table;
    }

    public static List<PageLine> Cell(params string?[] lines) => PageLayout.Cell(lines);

    private static PageTable Sinks(ValueList<SinkChange> sinks) =>
        Table(
            [("Where", 24), ("Before", 32), ("After", 32), ("", 12)],
            sinks.Select(change => new PageRow
            {
                Cells =
                [
                    PageLayout.Strong(change.At.ToString()),
                    Signal(change.Before, change.ServedBefore, change.LineBefore),
                    Signal(change.After, change.ServesAfter, change.LineAfter),
                    change.IsInEar ? [new PageLine(SheetWords.Mark(SheetMark.InEar), PageLineStyle.Mark)] : [],
                ],
            })
        );

    private static List<PageLine> Signal(PointRange? source, string? served, string? line)
    {
        var plugged = line is null || line == served ? null : $"plugged in: {line}";
        return source is { } from
            ? Cell(from.ToString(), served is null ? null : $"'{served}'", plugged)
            : Cell("silent", served is null ? null : $"'{served}'");
    }

    private static PageTable Demands(ValueList<DemandChange> demands) =>
        Table(
            [("Feed or line", 34), ("What happened", 22), ("Before", 22), ("After", 22)],
            demands.Select(change => new PageRow
            {
                Cells =
                [
                    [new PageLine(change.Name, PageLineStyle.Strong), .. Cell($"{(change.IsFeed ? "feed" : "line")} {change.Demand}")],
                    Cell(Fate(change.Fate), change.Was is null ? null : $"was {change.Was}"),
                    Cell(change.Before?.ToString()),
                    Cell(change.After?.ToString()),
                ],
            })
        );

    private static string Fate(DemandFate fate) =>
        fate switch
        {
            DemandFate.Added => "new",
            DemandFate.Removed => "gone",
            DemandFate.Moved => "moved",
            DemandFate.Placed => "has a place now",
            DemandFate.Lost => "is not delivered any more",
            _ => "renamed",
        };

    private static PageTable Entities(ValueList<EntityChange> entities) =>
        Table(
            [("What", 34), ("Change", 66)],
            entities.Select(change => new PageRow
            {
                Cells =
                [
                    [new PageLine(change.Id.Length == 0 ? change.Kind : $"{change.Kind} {change.Id}", PageLineStyle.Strong)],
                    Cell([Change(change), .. change.Members.Select(member => $"{member.Name}: {Short(member.Before)} \u2192 {Short(member.After)}")]),
                ],
            })
        );

    private static string? Change(EntityChange change) =>
        change.Change switch
        {
            EntityChangeKind.Added => "new",
            EntityChangeKind.Removed => "gone",
            EntityChangeKind.Renamed => $"renamed, was {change.Was}",
            EntityChangeKind.Reordered => "at another place in its list",
            _ => null,
        };

    private static string Short(string? json) =>
        json is null ? "(absent)"
        : json.Length <= LongestValue ? json
        : string.Concat(json.AsSpan(0, LongestValue), "\u2026");

    private static string Count(int number, string one) => PlainText.Count(number, one, one + "s");
}
