using RoutingRules.Model;

namespace RoutingRules.Reports.Sheets.Contents;

/// <summary>The sheet of one network.</summary>
public sealed record NetworkSheet
{
    /// <summary>The network.</summary>
    public required Id<Network> Id { get; init; }

    /// <summary>What people call it, or else its id.</summary>
    public required string Name { get; init; }

    /// <summary>How it carries audio.</summary>
    public required Transport Transport { get; init; }

    /// <summary>How long it collects samples for a packet, in milliseconds; null when nothing fixes it.</summary>
    public double? PacketMilliseconds { get; init; }

    /// <summary>The clock it follows; null when the document names none.</summary>
    public string? Clock { get; init; }

    /// <summary>Sample rate of that clock in hertz; null without a clock.</summary>
    public int? SampleRate { get; init; }

    /// <summary>Label of the device that leads the clock.</summary>
    public string? Leader { get; init; }

    /// <summary>Label of the device that takes over; null when the document names none.</summary>
    public string? Backup { get; init; }

    /// <summary>Its streams, in document order.</summary>
    public ValueList<NetworkStream> Streams { get; init; }

    /// <summary>Its links, in rig order.</summary>
    public ValueList<NetworkLink> Links { get; init; }
}
