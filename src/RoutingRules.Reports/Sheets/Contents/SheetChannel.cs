using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One console channel or track.</summary>
public sealed record SheetChannel : ISheetRow
{
    /// <summary>The channel.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The text shown there; null when there is none.</summary>
    public string? Label { get; init; }

    /// <summary>What it carries; null when it is silent.</summary>
    public SheetSignal? Signal { get; init; }

    /// <summary>The source and the connectors behind it, in the order of the signal: the first is where to plug.</summary>
    public ValueList<SheetPlace> Enters { get; init; }

    /// <summary>Phantom power at the input where a line enters; empty when no line does.</summary>
    public ValueList<SheetPhantom> Phantom { get; init; }

    /// <summary>Names of lines and feeds meant for this channel that do not arrive.</summary>
    public ValueList<string> Missing { get; init; }

    /// <summary>Marks, in the order of their kinds.</summary>
    public ValueList<SheetMark> Marks { get; init; }

    /// <summary>Why it is dead or reserved; null when nothing was said.</summary>
    public string? Reason { get; init; }

    /// <summary>True when nothing is said of it and nothing reaches it.</summary>
    public bool IsFree { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
