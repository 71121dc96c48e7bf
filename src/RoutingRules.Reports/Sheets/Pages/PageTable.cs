namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>A table of a page.</summary>
internal sealed class PageTable
{
    public required string Title { get; init; }

    /// <summary>Heading and share of the width of each column; the shares need not sum to 100.</summary>
    public required (string Heading, int Share)[] Columns { get; init; }

    /// <summary>True when the first column holds what to look for on a panel.</summary>
    public bool HasBigFirst { get; init; }

    public List<PageRow> Rows { get; } = [];
}
