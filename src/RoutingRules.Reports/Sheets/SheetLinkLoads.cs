using RoutingRules.Networks;
using RoutingRules.Resolving;

namespace RoutingRules.Reports.Sheets;

/// <summary>What the streams of a show put on each link in each direction.</summary>
internal sealed class SheetLinkLoads
{
    private readonly LinkTraffic traffic;
    private readonly HashSet<int> unknown = [];

    public SheetLinkLoads(ResolvedShow show)
    {
        traffic = new LinkTraffic(show.Network, show.Links.Count);
        foreach (var stream in show.Streams.Where(stream => stream.State == ConnectionState.Connected))
        {
            var rate = Rate(show, stream);
            if (rate is null)
            {
                unknown.Add(stream.Index);
            }

            var network = show.Network.IndexOf(stream.Model.Network);
            foreach (var receiver in network < 0 ? [] : stream.Receivers.Where(receiver => receiver.State == ConnectionState.Connected))
            {
                traffic.Add(stream.Index, network, show.Graph.DeviceOf(stream.From), show.Graph.DeviceOf(receiver.At), rate ?? 0);
            }
        }
    }

    public double Forward(LinkNode link) => traffic.On(2 * link.Index);

    public double Backward(LinkNode link) => traffic.On((2 * link.Index) + 1);

    public bool IsPartial(LinkNode link) => traffic.Crossings.Any(crossing => crossing.Direction / 2 == link.Index && unknown.Contains(crossing.Stream));

    /// <summary>Bits per second of a stream on the wire; null when the transport is not known or the stream does not start anywhere.</summary>
    public static double? Rate(ResolvedShow show, StreamNode stream) =>
        show.Network.IndexOf(stream.Model.Network) is >= 0 and var network && stream.State == ConnectionState.Connected
            ? LinkTraffic.Rate(show.Document.Rig, network, show.Graph.DeviceOf(stream.From), stream.Model.From.Width)
            : null;
}
