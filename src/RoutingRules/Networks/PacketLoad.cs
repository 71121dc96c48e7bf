namespace RoutingRules.Networks;

/// <summary>What one stream puts on the wire.</summary>
internal readonly record struct PacketLoad
{
    /// <summary>Samples of each channel in a packet.</summary>
    public required int Samples { get; init; }

    /// <summary>Octets of samples in a packet.</summary>
    public required int SampleOctets { get; init; }

    /// <summary>Octets a packet takes on the wire, with preamble and gap.</summary>
    public required int WireOctets { get; init; }

    public required double PacketsPerSecond { get; init; }

    public double BitsPerSecond => 8 * WireOctets * PacketsPerSecond;
}
