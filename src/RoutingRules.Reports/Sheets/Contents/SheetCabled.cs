namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>The far end of a cable.</summary>
public sealed record SheetCabled
{
    /// <summary>The connector at the far end.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The way the cable takes, with the position in a run of several; null when nothing was said.</summary>
    public string? Way { get; init; }
}
