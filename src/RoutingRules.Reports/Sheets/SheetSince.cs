namespace RoutingRules.Reports.Sheets;

/// <summary>The older revision that a sheet compares with.</summary>
public sealed record SheetSince
{
    /// <summary>The revision of that document; null when it has none.</summary>
    public string? Revision { get; init; }

    /// <summary>The day of that show; null when the document does not say.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The code of that document's sheets.</summary>
    public required string Code { get; init; }
}
