using RoutingRules.Reports.Sheets.Contents;

namespace RoutingRules.Reports.Sheets;

/// <summary>One difference from an older revision, for the list of all of them.</summary>
public sealed record SheetDifference
{
    /// <summary>New, changed or gone.</summary>
    public required SheetChangeKind Kind { get; init; }

    /// <summary>What it is about: a place, a line, a mix, a device.</summary>
    public required string Subject { get; init; }

    /// <summary>What was there; empty for what is new.</summary>
    public string Was { get; init; } = "";

    /// <summary>What is there; empty for what is gone.</summary>
    public string Now { get; init; } = "";
}
