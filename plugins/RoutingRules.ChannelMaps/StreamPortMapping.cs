using RoutingRules.Model;

namespace RoutingRules.ChannelMaps;

/// <summary>A channel of a stream at a slot of a device.</summary>
/// <param name="Stream">The stream.</param>
/// <param name="Index">Its number among those the device receives or sends, from 0.</param>
/// <param name="Channel">The channel, from 0.</param>
/// <param name="Cluster">The slot, from 0.</param>
internal sealed record StreamPortMapping(Id<AudioStream> Stream, int Index, int Channel, int Cluster);
