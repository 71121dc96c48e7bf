using RoutingRules.Engine.DocumentRuns;
using RoutingRules.Model;
using RoutingRules.Reports.Names;
using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>What a report needs to know beside the documents.</summary>
public sealed record ReportOptions
{
    /// <summary>
    /// Every rule that a finding may name, by id, see <see cref="RoutingEngine.Catalogue"/>; those that never ran are listed as switched off.
    /// </summary>
    public ValueList<RuleDescriptor> Rules { get; init; }

    /// <summary>Findings milder than this are counted, not listed, where the format is for people on a terminal.</summary>
    public Severity Lowest { get; init; } = Severity.Note;

    /// <summary>The lowest severity that counts as failed.</summary>
    public Severity FailOn { get; init; } = Severity.Warning;

    /// <summary>What points of a show are called where people read; null for as the document calls them.</summary>
    public Func<Show, PanelNames>? Names { get; init; }

    internal PanelNames NamesOf(DocumentCheck document) =>
        Names is not null && document.Show is { } show && !document.Result.Findings.IsEmpty ? Names(show) : PanelNames.Ids;
}
