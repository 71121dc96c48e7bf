using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>The points of one port group.</summary>
/// <typeparam name="TRow">The kind of row.</typeparam>
public sealed record SheetTable<TRow>
{
    /// <summary>The port group.</summary>
    public required Id<PortGroup> Group { get; init; }

    /// <summary>The connector; null when the profile does not say.</summary>
    public string? Connector { get; init; }

    /// <summary>One row for each point, by number.</summary>
    public ValueList<TRow> Rows { get; init; }
}
