using RoutingRules.Model;
using RoutingRules.Reports.FindingReports;
using RoutingRules.Reports.Names;
using RoutingRules.Rules;

namespace RoutingRules.Cli.Input;

/// <summary>What reports of a run need to know.</summary>
internal static class ReportSetup
{
    public static ReportOptions Options(RoutingEngine engine, bool isQuiet, Func<Show, PanelNames> names) =>
        new()
        {
            Rules = engine.Catalogue,
            Lowest = isQuiet ? engine.Config.FailOn : Severity.Note,
            FailOn = engine.Config.FailOn,
            Names = names,
        };
}
