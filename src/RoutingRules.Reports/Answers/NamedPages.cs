using RoutingRules.Reports.Names;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Answers;

/// <summary>Pages on which every point is called as it is called on the rig.</summary>
internal static class NamedPages
{
    public static PageSet Of(PageSet set, PanelNames names) =>
        ReferenceEquals(names, PanelNames.Ids)
            ? set
            : new PageSet
            {
                Title = set.Title,
                Meta = set.Meta,
                Code = set.Code,
                ViewNote = set.ViewNote,
                Cautions = set.Cautions,
                RepeatsCautions = set.RepeatsCautions,
                IsLargeType = set.IsLargeType,
                Pages = [.. set.Pages.Select(page => Of(page, names))],
            };

    private static Page Of(Page page, PanelNames names)
    {
        var named = new Page
        {
            Title = names.In(page.Title),
            Aside = page.Aside,
            Code = page.Code,
            HasAllCautions = page.HasAllCautions,
            MaySharePaper = page.MaySharePaper,
            FollowsOn = page.FollowsOn,
        };
        named.Facts.AddRange(page.Facts.Select(fact => names.In(fact)));
        named.Flows.AddRange(page.Flows);
        named.Tables.AddRange(page.Tables.Select(table => Of(table, names)));
        return named;
    }

    private static PageTable Of(PageTable table, PanelNames names)
    {
        var named = new PageTable
        {
            Title = names.In(table.Title),
            Columns = table.Columns,
            HasBigFirst = table.HasBigFirst,
            RowColumns = table.RowColumns,
            NeedsHeadings = table.NeedsHeadings,
            FirstPercent = table.FirstPercent,
        };
        named.Rows.AddRange(
            table.Rows.Select(row => new PageRow
            {
                Cells = [.. row.Cells.Select(cell => cell.ConvertAll(line => line with { Text = names.In(line.Text) }))],
                Across = row.Across is null ? null : names.In(row.Across),
                IsHeading = row.IsHeading,
                IsBlank = row.IsBlank,
            })
        );
        return named;
    }
}
