using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One bus or other internal source.</summary>
public sealed record SheetBus : ISheetRow
{
    /// <summary>The bus.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The text shown there; null when there is none.</summary>
    public string? Label { get; init; }

    /// <summary>Names of the feeds and lines that start here, with L or R for a half of a pair.</summary>
    public ValueList<string> Names { get; init; }

    /// <summary>Every place it arrives at, one path each.</summary>
    public ValueList<SheetPath> Arrives { get; init; }

    /// <summary>Marks, in the order of their kinds.</summary>
    public ValueList<SheetMark> Marks { get; init; }

    /// <summary>Why it is dead or reserved; null when nothing was said.</summary>
    public string? Reason { get; init; }

    /// <summary>True when nothing is said of it and it reaches no connector and no channel.</summary>
    public bool IsFree { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
