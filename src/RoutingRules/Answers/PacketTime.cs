using RoutingRules.Model;

namespace RoutingRules.Answers;

/// <summary>How long a network collects samples before it sends them.</summary>
internal static class PacketTime
{
    /// <summary>The packet time in milliseconds; null when neither the document nor the transport fixes one.</summary>
    /// <remarks>
    /// Usual ones: 1 ms for RTP (AES67, clause 7.2, the time every device must support), 125 and 250 microseconds for AVTP classes A and B
    /// (IEEE 802.1Q, class measurement intervals); both from memory.
    /// </remarks>
    public static double? Milliseconds(Network network)
    {
        var microseconds = network.PacketMicroseconds
            ?? (network.Transport == Transport.RtpL24 || network.Transport == Transport.RtpL16 ? 1000
            : network.Transport == Transport.AvtpClassA ? 125
            : network.Transport == Transport.AvtpClassB ? 250
            : null as int?);
        return microseconds / 1000.0;
    }
}
