namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>How something differs from the older revision.</summary>
public enum SheetChangeKind
{
    /// <summary>It was not there.</summary>
    New,

    /// <summary>It was different.</summary>
    Changed,

    /// <summary>It is there no more.</summary>
    Gone,
}
