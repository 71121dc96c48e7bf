namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>A table of a page.</summary>
internal sealed class PageTable
{
    public required string Title { get; init; }

    public required PageColumn[] Columns { get; init; }

    /// <summary>True when the first column holds what to look for on a panel.</summary>
    public bool HasBigFirst { get; init; }

    /// <summary>How many columns of rows stand side by side where paper has room; above 1 a row is its first cell, one text and its boxes.</summary>
    public int RowColumns { get; init; } = 1;

    /// <summary>True when its headings say what its title does not, so that they are printed above short rows too.</summary>
    public bool NeedsHeadings { get; init; }

    /// <summary>The width of the first cell of short rows, in percent.</summary>
    public int FirstPercent { get; init; } = 14;

    public List<PageRow> Rows { get; } = [];
}
