namespace RoutingRules.ChannelMaps;

/// <summary>A device, or what is patched inside it, cannot be said as a channel map; the message says why and what to do.</summary>
public sealed class ChannelMapException(string message) : Exception(message);
