namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>A row of a table: cells, or a heading across.</summary>
internal sealed class PageRow
{
    public List<PageLine>[] Cells { get; init; } = [];

    /// <summary>Text across all columns; null when the row has cells.</summary>
    public string? Across { get; init; }

    /// <summary>True when the text across is a heading of the rows that follow.</summary>
    public bool IsHeading { get; init; }

    /// <summary>True for a row to write in.</summary>
    public bool IsBlank { get; init; }
}
