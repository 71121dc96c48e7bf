namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>How a row differs from the same row of an older revision.</summary>
public sealed record SheetChange
{
    /// <summary>New or changed.</summary>
    public required SheetChangeKind Kind { get; init; }

    /// <summary>What was printed there, in words; empty for what is new.</summary>
    public string Was { get; init; } = "";
}
