namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>What travels in one slot of a stream.</summary>
public sealed record SheetSlot
{
    /// <summary>The number of the slot in its group, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The name of what it carries, or of its source; null when it carries nothing.</summary>
    public string? Name { get; init; }
}
