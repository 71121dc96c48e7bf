using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A stream, or a carrier link, that a device sends.</summary>
public sealed record SheetSentStream
{
    /// <summary>The id of the stream or link.</summary>
    public required string Id { get; init; }

    /// <summary>What people call the stream; null when the document does not say.</summary>
    public string? Label { get; init; }

    /// <summary>True for a link that is itself the stream.</summary>
    public bool IsLink { get; init; }

    /// <summary>The transmit slots.</summary>
    public required PointRange Slots { get; init; }

    /// <summary>What travels, slot by slot.</summary>
    public ValueList<SheetSlot> Contents { get; init; }

    /// <summary>Everybody who takes it.</summary>
    public ValueList<SheetReceiver> Receivers { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
