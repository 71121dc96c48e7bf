namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A place where a signal arrives.</summary>
public sealed record SheetArrival
{
    /// <summary>The place.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The text shown there; null when there is none.</summary>
    public string? Label { get; init; }
}
