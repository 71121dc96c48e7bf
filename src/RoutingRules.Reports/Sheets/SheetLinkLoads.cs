using RoutingRules.Networks;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>What the streams of a show put on each link in each direction; a stream to many receivers counts once on a link.</summary>
internal sealed class SheetLinkLoads
{
    private readonly ResolvedShow show;
    private readonly double[] loads;
    private readonly bool[] isPartial;

    public SheetLinkLoads(ResolvedShow show)
    {
        this.show = show;
        loads = new double[2 * show.Links.Count];
        isPartial = new bool[show.Links.Count];
        foreach (var stream in show.Streams)
        {
            Add(stream);
        }
    }

    public double Forward(LinkNode link) => loads[2 * link.Index];

    public double Backward(LinkNode link) => loads[(2 * link.Index) + 1];

    public bool IsPartial(LinkNode link) => isPartial[link.Index];

    /// <summary>Bits per second of a stream on the wire; null when the transport is not known or the stream does not start anywhere.</summary>
    public static double? Rate(ResolvedShow show, StreamNode stream) =>
        show.Network.IndexOf(stream.Model.Network) is >= 0 and var network && stream.State == ConnectionState.Connected
            ? TransportData.Load(
                show.Document.Rig.Networks[network],
                NetworkRates.Of(show.Document.Rig, show.Document.Rig.Networks[network], show.Graph.DeviceOf(stream.From)),
                stream.Model.From.Width)?.BitsPerSecond
            : null;

    private void Add(StreamNode stream)
    {
        var network = show.Network.IndexOf(stream.Model.Network);
        if (stream.State != ConnectionState.Connected || network < 0)
        {
            return;
        }

        var rate = Rate(show, stream);
        var crossed = new HashSet<int>();
        var sender = show.Graph.DeviceOf(stream.From);
        foreach (var receiver in stream.Receivers)
        {
            if (receiver.State == ConnectionState.Connected && show.Network.Path(network, sender, show.Graph.DeviceOf(receiver.At)) is { } path)
            {
                Follow(path, sender, crossed, rate);
            }
        }
    }

    /// <summary>Walks the path and tells the direction of each link by the device at which it is entered.</summary>
    private void Follow(IReadOnlyList<int> path, DeviceNode from, HashSet<int> crossed, double? rate)
    {
        foreach (var index in path)
        {
            var link = show.Links[index];
            var isForward = show.Graph.DeviceOf(link.From) == from;
            from = show.Graph.DeviceOf(isForward ? link.To : link.From);
            var direction = (2 * index) + (isForward ? 0 : 1);
            if (crossed.Add(direction))
            {
                loads[direction] += rate ?? 0;
                isPartial[index] |= rate is null;
            }
        }
    }
}
