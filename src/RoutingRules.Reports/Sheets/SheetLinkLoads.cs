using RoutingRules.Networks;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>What the streams of a show put on each link in each direction; a stream to many receivers counts once on a link.</summary>
internal sealed class SheetLinkLoads
{
    private readonly double[] loads;
    private readonly bool[] isPartial;

    public SheetLinkLoads(ResolvedShow show)
    {
        loads = new double[2 * show.Links.Count];
        isPartial = new bool[show.Links.Count];
        foreach (var stream in show.Streams)
        {
            var rate = Rate(show, stream);
            foreach (var direction in Directions(show, stream))
            {
                loads[direction] += rate ?? 0;
                isPartial[direction / 2] |= rate is null;
            }
        }
    }

    public double Forward(LinkNode link) => loads[2 * link.Index];

    public double Backward(LinkNode link) => loads[(2 * link.Index) + 1];

    public bool IsPartial(LinkNode link) => isPartial[link.Index];

    /// <summary>Bits per second of a stream on the wire; null when the transport is not known or the stream does not start anywhere.</summary>
    public static double? Rate(ResolvedShow show, StreamNode stream) =>
        show.Network.IndexOf(stream.Model.Network) is >= 0 and var network && stream.State == ConnectionState.Connected
            ? TransportData
                .Load(
                    show.Document.Rig.Networks[network],
                    NetworkRates.Of(show.Document.Rig, show.Document.Rig.Networks[network], show.Graph.DeviceOf(stream.From)),
                    stream.Model.From.Width
                )
                ?.BitsPerSecond
            : null;

    private static IEnumerable<int> Directions(ResolvedShow show, StreamNode stream) =>
        show.Network.IndexOf(stream.Model.Network) is >= 0 and var network && stream.State == ConnectionState.Connected
            ? stream
                .Receivers.Where(receiver => receiver.State == ConnectionState.Connected)
                .SelectMany(receiver => show.Network.Directions(network, show.Graph.DeviceOf(stream.From), show.Graph.DeviceOf(receiver.At)))
                .Distinct()
            : [];
}
