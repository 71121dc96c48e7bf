using RoutingRules.Reports.FindingReports;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Input;

/// <summary>What reports of a run need to know.</summary>
internal static class ReportSetup
{
    public static ReportOptions Options(RoutingEngine engine, bool isQuiet) =>
        new()
        {
            Rules = engine.Catalogue,
            Lowest = isQuiet ? engine.Config.FailOn : Severity.Note,
            FailOn = engine.Config.FailOn,
        };
}
