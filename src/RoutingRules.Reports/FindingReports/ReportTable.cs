namespace RoutingRules.Reports.FindingReports;

/// <summary>A table of a report for people.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Columns">The headings of its columns.</param>
/// <param name="Rows">The cells, as many in each row as there are columns.</param>
internal sealed record ReportTable(string Title, string[] Columns, List<string[]> Rows);
