using RoutingRules.Networks;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>
/// What streams take of the directions of links, with the figures of the rule about reservations; every stream is rounded up to whole bits a second.
/// </summary>
internal sealed class LinkLoads
{
    private readonly ResolvedShow show;
    private readonly NetworkMap network;
    private readonly double percent;
    private readonly Dictionary<(int Network, int Sender, int Width), long> known = [];
    private readonly HashSet<(int Stream, int Direction)> crossings = [];

    /// <summary>Adds up what streams take.</summary>
    /// <param name="show">The show with its devices and links.</param>
    /// <param name="network">The ways of streams, without what is excluded.</param>
    /// <param name="percent">How many percent of a link's speed streams may take in one direction.</param>
    /// <param name="streams">The streams that count.</param>
    /// <param name="isExcluded">For each device whether it takes no part.</param>
    public LinkLoads(ResolvedShow show, NetworkMap network, double percent, IEnumerable<StreamNode> streams, bool[] isExcluded)
    {
        this.show = show;
        this.network = network;
        this.percent = percent;
        var traffic = new LinkTraffic(network, show.Links.Count);
        foreach (var stream in streams)
        {
            var on = network.IndexOf(stream.Model.Network);
            foreach (var receiver in on < 0 || stream.From.IsNone ? [] : stream.Receivers)
            {
                if (!receiver.At.IsNone && !isExcluded[show.Graph.DeviceOf(receiver.At).Index])
                {
                    traffic.Add(stream.Index, on, show.Graph.DeviceOf(stream.From), show.Graph.DeviceOf(receiver.At), Of(stream));
                }
            }
        }

        Staying = new long[2 * show.Links.Count];
        Streams = new int[Staying.Length];
        foreach (var crossing in traffic.Crossings)
        {
            Staying[crossing.Direction] += (long)crossing.Rate;
            Streams[crossing.Direction]++;
            crossings.Add((crossing.Stream, crossing.Direction));
        }
    }

    /// <summary>For each direction what the streams take, in bit/s.</summary>
    public long[] Staying { get; }

    /// <summary>For each direction how many of the streams pass it.</summary>
    public int[] Streams { get; }

    /// <summary>What streams may take of a direction, in bit/s; the greatest number there is for a link without a speed.</summary>
    public long Most(int direction) => show.Links[direction / 2].Model.SpeedMbps is { } speed ? (long)(speed * 10_000.0 * percent) : long.MaxValue;

    /// <summary>True when a stream passes a direction to one of its receivers.</summary>
    public bool IsCrossed(int stream, int direction) => crossings.Contains((stream, direction));

    /// <summary>What a stream takes of every direction it passes.</summary>
    public long Of(StreamNode stream) =>
        stream.From.IsNone ? 0 : Of(network.IndexOf(stream.Model.Network), show.Graph.DeviceOf(stream.From).Index, stream.Model.From.Width);

    /// <summary>What the stream of a block takes on a network.</summary>
    public long Of(int on, TransmitBlock block) => Of(on, block.Device, block.Width);

    /// <summary>What the stream of the input takes that sends a block and stays.</summary>
    public long OfStaying(TransmitBlock block) => Of(show.Streams[block.KeptStream]);

    private long Of(int on, int sender, int width)
    {
        if (on < 0)
        {
            return 0;
        }

        if (!known.TryGetValue((on, sender, width), out var load))
        {
            // A rate that is whole comes out as such but for the last digits of a double.
            load = (long)Math.Ceiling((LinkTraffic.Rate(show.Document.Rig, on, show.Devices[sender], width) ?? 0) - 1e-4);
            known.Add((on, sender, width), load);
        }

        return load;
    }
}
