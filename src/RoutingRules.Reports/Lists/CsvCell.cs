namespace RoutingRules.Reports.Lists;

/// <summary>A cell of a list.</summary>
/// <param name="Text">What it says, without the quotes around it.</param>
/// <param name="Line">The line of the text on which it begins, from 1; line breaks inside quotes count.</param>
internal sealed record CsvCell(string Text, int Line);
