namespace RoutingRules.Cli.Output;

/// <summary>The formats of reports.</summary>
internal enum ReportFormat
{
    Text,
    Json,
}
