using RoutingRules.Model;

namespace RoutingRules.Networks;

/// <summary>How long a network collects samples before it sends them.</summary>
internal static class PacketTime
{
    /// <summary>The packet time in milliseconds; null when neither the document nor the transport fixes one.</summary>
    public static double? Milliseconds(Network network) => (network.PacketMicroseconds ?? TransportData.Find(network.Transport)?.PacketMicroseconds) / 1000.0;
}
