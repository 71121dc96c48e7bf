namespace RoutingRules.Reports.Sheets.Pages;

/// <summary>A line of a cell.</summary>
internal readonly record struct PageLine(string Text, PageLineStyle Style)
{
    /// <summary>True for a line that the heading of its column does not speak of.</summary>
    public bool IsAside { get; init; }

    /// <summary>How much of a bar is filled, from 0 to 1.</summary>
    public double Share { get; init; }

    /// <summary>Where on a bar the limit stands, from 0 to 1.</summary>
    public double Limit { get; init; }
}
