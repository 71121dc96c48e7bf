using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>The connectors and channels a signal passes after its source, up to where it ends.</summary>
public sealed record SheetPath
{
    /// <summary>In the order of the signal; never empty.</summary>
    public ValueList<SheetPlace> Places { get; init; }

    /// <summary>The ways of the cables on it, in order; null when nothing was said.</summary>
    public string? Way { get; init; }
}
