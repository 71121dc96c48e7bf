using RoutingRules.Model;
using RoutingRules.Reports.Sheets.Pages;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>One input connector.</summary>
public sealed record SheetInput : ISheetRow
{
    /// <summary>The connector.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The text shown there; null when there is none.</summary>
    public string? Label { get; init; }

    /// <summary>The lines that enter here; more than one only when the document says so.</summary>
    public ValueList<SheetLineInfo> Lines { get; init; }

    /// <summary>The output a cable of the rig brings; null when there is none.</summary>
    public SheetCabled? PluggedFrom { get; init; }

    /// <summary>What that cable brings; null when it is silent or there is none.</summary>
    public SheetSignal? Signal { get; init; }

    /// <summary>Phantom power.</summary>
    public required SheetPhantom Phantom { get; init; }

    /// <summary>The channels and tracks it reaches; when it reaches none, the outputs of its own device.</summary>
    public ValueList<SheetArrival> GoesTo { get; init; }

    /// <summary>Channels its lines are meant for and do not reach from any of their inputs.</summary>
    public ValueList<SheetPlace> Missing { get; init; }

    /// <summary>Labels of the consoles that set the gain; more than one only when the document says so.</summary>
    public ValueList<string> GainOwners { get; init; }

    /// <summary>Labels of the consoles that follow with trim.</summary>
    public ValueList<string> GainFollowers { get; init; }

    /// <summary>Marks, in the order of their kinds.</summary>
    public ValueList<SheetMark> Marks { get; init; }

    /// <summary>Why it is dead or reserved; null when nothing was said.</summary>
    public string? Reason { get; init; }

    /// <summary>True when nothing is said of it and no cable of the rig reaches it.</summary>
    public bool IsFree { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
