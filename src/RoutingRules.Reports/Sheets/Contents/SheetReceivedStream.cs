using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>A stream, or a carrier link, that a device takes.</summary>
public sealed record SheetReceivedStream
{
    /// <summary>The id of the stream or link.</summary>
    public required string Id { get; init; }

    /// <summary>True for a link that is itself the stream.</summary>
    public bool IsLink { get; init; }

    /// <summary>The receive slots.</summary>
    public required PointRange Slots { get; init; }

    /// <summary>The stream channels it takes.</summary>
    public required NumberRange Channels { get; init; }

    /// <summary>The sending device.</summary>
    public required string SenderLabel { get; init; }

    /// <summary>The whole stream at the sender.</summary>
    public required PointRange SenderSlots { get; init; }

    /// <summary>What arrives, slot by slot.</summary>
    public ValueList<SheetSlot> Contents { get; init; }

    /// <summary>How it differs from the older revision; null when it does not, or when there is none.</summary>
    public SheetChange? Change { get; init; }
}
