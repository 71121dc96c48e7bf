using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Networks;

/// <summary>
/// What streams put on the directions of links. A stream to many receivers counts once on a direction, at its full rate however little of it is used.
/// </summary>
/// <remarks>Direction d of link i has position 2i + d; 0 is from its first jack to its second.</remarks>
/// <param name="map">The paths of streams.</param>
/// <param name="links">How many links the rig has.</param>
internal sealed class LinkTraffic(NetworkMap map, int links)
{
    private readonly double[] loads = new double[2 * links];
    private readonly int[] last = new int[2 * links];
    private readonly List<LinkCrossing> crossings = [];

    /// <summary>Every crossing of a stream and a direction, in the order in which they were added.</summary>
    public IReadOnlyList<LinkCrossing> Crossings => crossings;

    /// <summary>What a stream takes of each direction that it passes, in bit/s; null when the transport is not known.</summary>
    public static double? Rate(Rig rig, int network, DeviceNode sender, int channels) =>
        TransportData.Load(rig.Networks[network], NetworkRates.Of(rig, rig.Networks[network], sender), channels)?.BitsPerSecond;

    /// <summary>What all streams that were added take of a direction, in bit/s.</summary>
    public double On(int direction) => loads[direction];

    /// <summary>Adds a stream on the path to one of its receivers; the receivers of a stream come one after the other.</summary>
    /// <param name="stream">Position of the stream.</param>
    /// <param name="network">Position of its network in the rig.</param>
    /// <param name="sender">The sender.</param>
    /// <param name="receiver">The receiver.</param>
    /// <param name="rate">What the stream takes, in bit/s.</param>
    public void Add(int stream, int network, DeviceNode sender, DeviceNode receiver, double rate)
    {
        if (!map.HasLinks(network) || sender.Index == receiver.Index)
        {
            return;
        }

        var tree = map.Tree(network, sender);
        for (var at = map.End(tree, receiver); at >= 0 && tree[at] >= 0; at = map.Other(tree[at], at))
        {
            var direction = map.Direction(tree[at], at);
            if (last[direction] == stream + 1)
            {
                return; // From here back to the sender it was counted with an earlier receiver.
            }

            last[direction] = stream + 1;
            loads[direction] += rate;
            crossings.Add(new LinkCrossing(direction, stream, rate));
        }
    }
}
