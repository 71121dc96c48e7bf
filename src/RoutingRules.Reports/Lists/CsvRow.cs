namespace RoutingRules.Reports.Lists;

/// <summary>A row of a list.</summary>
/// <param name="Line">The line of the text on which it begins, from 1.</param>
/// <param name="Cells">Its cells, one or more.</param>
internal sealed record CsvRow(int Line, List<CsvCell> Cells)
{
    /// <summary>True when it says nothing, as a blank line or a row of separators alone.</summary>
    public bool IsBlank => Cells.TrueForAll(cell => cell.Text.Length == 0);
}
