namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A point of a device that has a row of its own, unless nothing is said of it.</summary>
internal interface ISheetRow
{
    /// <summary>True when nothing is said of the point.</summary>
    bool IsFree { get; }

    /// <summary>What differs from the older revision; null for nothing.</summary>
    SheetChange? Change { get; }

    /// <summary>Where the point is.</summary>
    SheetPlace At { get; }
}
