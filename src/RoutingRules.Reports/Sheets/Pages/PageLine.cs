namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>A line of a cell.</summary>
internal readonly record struct PageLine(string Text, PageLineStyle Style)
{
    /// <summary>How much of a bar is filled, from 0 to 1.</summary>
    public double Share { get; init; }

    /// <summary>Where on a bar the limit stands, from 0 to 1.</summary>
    public double Limit { get; init; }
}
