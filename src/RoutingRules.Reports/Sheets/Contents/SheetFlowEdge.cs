namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>What runs from one place of a drawing to another.</summary>
public sealed record SheetFlowEdge
{
    /// <summary>Position of the place it leaves in the list of places, from 0.</summary>
    public required int From { get; init; }

    /// <summary>Position of the place it reaches, from 0.</summary>
    public required int To { get; init; }

    /// <summary>How many signals it stands for.</summary>
    public int Count { get; init; } = 1;

    /// <summary>True when one of them is an in-ear mix.</summary>
    public bool IsInEar { get; init; }
}
