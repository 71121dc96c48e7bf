namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A channel that a line shall reach: one box to tick.</summary>
public sealed record LineTick
{
    /// <summary>The console or recorder.</summary>
    public required string DeviceLabel { get; init; }

    /// <summary>The channel.</summary>
    public required SheetPlace At { get; init; }

    /// <summary>The text shown there; null when there is none.</summary>
    public string? Label { get; init; }

    /// <summary>False when the line does not reach it in the patch.</summary>
    public required bool Arrives { get; init; }
}
