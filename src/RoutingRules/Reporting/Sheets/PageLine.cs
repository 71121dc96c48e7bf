namespace RoutingRules.Reporting.Sheets;

/// <summary>A line of a cell.</summary>
internal readonly record struct PageLine(string Text, PageLineStyle Style);
