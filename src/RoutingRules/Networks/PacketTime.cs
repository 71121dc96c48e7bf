using RoutingRules.Model;

namespace RoutingRules.Networks;

/// <summary>How long a network collects samples before it sends them.</summary>
internal static class PacketTime
{
    /// <summary>The packet time in milliseconds; null when neither the document nor the transport fixes one.</summary>
    public static double? Milliseconds(Network network) => (network.PacketMicroseconds ?? TransportData.Find(network.Transport)?.PacketMicroseconds) / 1000.0;

    /// <summary>
    /// Milliseconds from the sending of a sample until receivers give it out: what the network states, else the packet time; null when nothing fixes
    /// either.
    /// </summary>
    public static double? UntilGivenOut(Network network) =>
        network.PresentationOffsetMicroseconds is { } offset ? Math.Max(offset / 1000.0, Milliseconds(network) ?? 0) : Milliseconds(network);
}
