using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One output connector.</summary>
public sealed record SheetOutput : ISheetRow
{
    /// <summary>The connector.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The text shown there; null when there is none.</summary>
    public string? Label { get; init; }

    /// <summary>What it carries; null when it is silent.</summary>
    public SheetSignal? Signal { get; init; }

    /// <summary>The steps from the source, in the order of the signal.</summary>
    public ValueList<SheetHop> Hops { get; init; }

    /// <summary>The far ends of its cables.</summary>
    public ValueList<SheetCabled> GoesTo { get; init; }

    /// <summary>Where what hears it stands, as the feeds say; null when none does.</summary>
    public string? Position { get; init; }

    /// <summary>Marks, in the order of their kinds.</summary>
    public ValueList<SheetMark> Marks { get; init; }

    /// <summary>Why it is dead or reserved; null when nothing was said.</summary>
    public string? Reason { get; init; }

    /// <summary>True when nothing is said of it and nothing reaches it.</summary>
    public bool IsFree { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
