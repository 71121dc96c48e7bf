namespace RoutingRules.Model;

/// <summary>An audio network.</summary>
public sealed record Network
{
    /// <summary>The id that links and streams name.</summary>
    public required Id<Network> Id { get; init; }

    /// <summary>What people call the network.</summary>
    public string? Name { get; init; }

    /// <summary>How audio travels.</summary>
    public required Transport Transport { get; init; }

    /// <summary>Packet time in microseconds; null takes the transport's usual one.</summary>
    public int? PacketMicroseconds { get; init; }

    /// <summary>
    /// Microseconds from the sending of a sample until receivers give it out, packet time included: the presentation time offset of AVTP, the link offset
    /// or receiver buffer of RTP; null when nothing was said.
    /// </summary>
    public int? PresentationOffsetMicroseconds { get; init; }

    /// <summary>The clock domain.</summary>
    public Id<Clock>? Clock { get; init; }

    /// <summary>What keeps a loop of links from flooding.</summary>
    public LoopControl LoopControl { get; init; }

    /// <summary>Content that other tools keep here; null when absent.</summary>
    public ExtensionData? Extensions { get; init; }
}
