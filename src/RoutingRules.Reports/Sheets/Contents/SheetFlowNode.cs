namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A place of a drawing.</summary>
public sealed record SheetFlowNode
{
    /// <summary>Its column, from 0 on the left.</summary>
    public required int Column { get; init; }

    /// <summary>What it is.</summary>
    public required SheetFlowKind Kind { get; init; }

    /// <summary>What it stands on with others of its column: a device or a stream; empty when it stands alone.</summary>
    public required string Frame { get; init; }

    /// <summary>What to look for there: group and number, or a name.</summary>
    public required string Mark { get; init; }

    /// <summary>What it carries; empty when the mark says all.</summary>
    public string Name { get; init; } = "";

    /// <summary>More in small type, of a bundle the names of its signals; empty for nothing.</summary>
    public string Note { get; init; } = "";

    /// <summary>True when it carries an in-ear mix.</summary>
    public bool IsInEar { get; init; }
}
