using RoutingRules.Reports.FindingReports;

namespace RoutingRules.Cli.Output;

/// <summary>A report that goes to a file: <c>--report FORMAT=FILE</c>.</summary>
internal sealed record ReportTarget(ReportFormat Format, string Path);
