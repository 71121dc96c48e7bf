namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>A column of a table.</summary>
/// <param name="Heading">What stands above it.</param>
/// <param name="Share">Its share of the width; the shares of a table need not sum to 100.</param>
/// <param name="Lead">What stands for the heading where short rows are one text, with its space; null for nothing.</param>
internal readonly record struct PageColumn(string Heading, int Share, string? Lead = null)
{
    public static implicit operator PageColumn((string Heading, int Share) column) => new(column.Heading, column.Share);

    public static implicit operator PageColumn((string Heading, int Share, string Lead) column) => new(column.Heading, column.Share, column.Lead);
}
