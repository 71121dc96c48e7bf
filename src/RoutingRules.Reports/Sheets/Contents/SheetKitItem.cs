using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One kind of thing that has to be there, and how many.</summary>
public sealed record SheetKitItem
{
    /// <summary>What it is.</summary>
    public required SheetKitKind Kind { get; init; }

    /// <summary>What people call it; of cables also for what, and up to which length.</summary>
    public required string Name { get; init; }

    /// <summary>Who brings it; null when the document does not say.</summary>
    public string? SuppliedBy { get; init; }

    /// <summary>How many the show needs, from 1.</summary>
    public required int Count { get; init; }

    /// <summary>
    /// How many more to take: one for each ten begun, none of what others bring, of looms and of what nobody has named. Common practice, no source.
    /// </summary>
    public int Spare { get; init; }

    /// <summary>Lines, packs or links it is for, each once; empty for looms and cables of signals.</summary>
    public ValueList<string> For { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
