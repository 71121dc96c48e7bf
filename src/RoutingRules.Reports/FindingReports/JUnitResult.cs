namespace RoutingRules.Reports.FindingReports;

/// <summary>How a test case ended.</summary>
internal enum JUnitResult
{
    Passed,
    Failure,
    Error,
    Skipped,
}
