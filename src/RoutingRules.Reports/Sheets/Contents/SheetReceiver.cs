using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>Where a stream goes.</summary>
public sealed record SheetReceiver
{
    /// <summary>The receiving device.</summary>
    public required string DeviceLabel { get; init; }

    /// <summary>Its receive slots.</summary>
    public required PointRange Slots { get; init; }

    /// <summary>The stream channels it takes.</summary>
    public required NumberRange Channels { get; init; }
}
