using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>Phantom power at an input, as set and as wanted.</summary>
public sealed record SheetPhantom
{
    /// <summary>How it is set; null when nothing was said.</summary>
    public bool? IsOn { get; init; }

    /// <summary>Whether the connector can supply it at all.</summary>
    public required bool IsSupplied { get; init; }

    /// <summary>What the line wants; where several lines meet, the strictest.</summary>
    public PhantomNeed Need { get; init; }
}
