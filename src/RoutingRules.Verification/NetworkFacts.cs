using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Which links streams use and how full they get.</summary>
internal sealed class NetworkFacts
{
    private readonly RigFacts rig;
    private readonly Dictionary<(Id<Network>, int), List<(Link Link, int Other, bool IsForward)>> edges = [];
    private readonly Dictionary<Point, int> nodes = [];
    private readonly Dictionary<Id<Device>, List<int>> nodesOf = [];
    private readonly HashSet<Id<Network>> linked = [];

    /// <summary>The links of a rig.</summary>
    /// <param name="rig">The rig.</param>
    /// <param name="ignoresExclusions">True to look at the links as they were before anything was excluded.</param>
    public NetworkFacts(RigFacts rig, bool ignoresExclusions = false)
    {
        this.rig = rig;
        foreach (var device in rig.Devices)
            AddJacks(device);

        foreach (var link in rig.Rig.Links.Where(rig.Connects).OrderBy(link => link.Id))
        {
            linked.Add(link.Network);
            if (!ignoresExclusions && (rig.IsExcluded(link) || rig.IsExcluded(link.From[0]) || rig.IsExcluded(link.To[0])))
                continue;

            if (nodes.TryGetValue(link.From[0], out var from) && nodes.TryGetValue(link.To[0], out var to))
            {
                Edges(link.Network, from).Add((link, to, true));
                Edges(link.Network, to).Add((link, from, false));
            }
        }
    }

    /// <summary>The first listed network that both devices are on, whatever is excluded; null when there is none.</summary>
    public Network? FirstCommon(DeviceFacts one, DeviceFacts other)
    {
        foreach (var network in rig.Rig.Networks)
        {
            if (rig.IsOn(network, one) && rig.IsOn(network, other))
                return network;
        }

        return null;
    }

    /// <summary>
    /// The directed links from a sender to its receivers: the breadth-first tree, nearest first, ties by link id, cut to the receivers.
    /// Null when a receiver cannot be reached, unless such receivers are skipped; empty on a network without links.
    /// </summary>
    public HashSet<(Id<Link> Link, bool IsForward)>? Tree(Id<Network> network, GroupFacts sender, IEnumerable<GroupFacts> receivers, bool skipsLost = false)
    {
        var used = new HashSet<(Id<Link>, bool)>();
        if (!linked.Contains(network))
        {
            var isJoined =
                rig.Rig.Networks.Any(known => known.Id == network)
                && RigFacts.HasJack(sender.Device)
                && receivers.All(receiver => RigFacts.HasJack(receiver.Device));
            return isJoined || skipsLost ? used : null;
        }

        var reached = new Dictionary<int, (int Parent, Id<Link> Link, bool IsForward)>();
        var frontier = Jacks(sender);
        foreach (var node in frontier)
            reached.TryAdd(node, (-1, default, false));

        while (frontier.Count > 0)
        {
            var steps = frontier
                .SelectMany(node => Edges(network, node).Select(edge => (edge.Link.Id, edge.Other, node, edge.IsForward)))
                .OrderBy(step => step.Id)
                .ToList();
            frontier = [];
            foreach (var (id, other, node, isForward) in steps)
            {
                if (reached.TryAdd(other, (node, id, isForward)))
                    frontier.Add(other);
            }
        }

        foreach (var receiver in receivers)
        {
            // A device may have several jacks; the one met first carries the stream, and the dictionary keeps the order of meeting.
            var node = Jacks(receiver).Where(reached.ContainsKey).Select(jack => (int?)jack).MinBy(jack => Depth(reached, jack!.Value));
            if (node is null && skipsLost)
                continue;

            if (node is null)
                return null;

            for (var at = node.Value; reached[at].Parent >= 0; at = reached[at].Parent)
                used.Add((reached[at].Link, reached[at].IsForward));
        }

        return used;
    }

    /// <summary>What one stream of a width takes of a link, in whole bits a second; 0 where the transport is unknown.</summary>
    /// <remarks>
    /// Octets on the wire as in IEEE 802.1Q (header, check, preamble, gap) with the headers of IEEE 1722 or of IPv4, UDP and RTP; point to point 32 bits a
    /// sample as in AES10. A packet holds as many samples as its time needs, rounded up, and what is left of a bit counts as one.
    /// </remarks>
    public long BitsPerSecond(Network network, int channels, DeviceFacts? sender = null)
    {
        var rate = (long)rig.SampleRate(network, sender);
        if (network.Transport == Transport.PointToPoint)
            return 32 * rate * channels;

        var isClassA = network.Transport == Transport.AvtpClassA;
        if (isClassA || network.Transport == Transport.AvtpClassB)
        {
            var interval = network.PacketMicroseconds ?? (isClassA ? 125 : 250);
            var inner = Math.Max(42L, 24 + (Up(rate * interval, 1_000_000) * channels * 4));
            return Up(8 * (inner + 42) * 1_000_000, interval);
        }

        var octets =
            network.Transport == Transport.RtpL24 ? 3
            : network.Transport == Transport.RtpL16 ? 2
            : 0;
        if (octets == 0)
            return 0;

        var samples = PacketSamples(rate, network.PacketMicroseconds ?? 1000);
        var packet = Math.Max(46L, 40 + (samples * channels * octets)) + 38;
        return Up(8 * packet * rate, samples);
    }

    // AES67-2023, 7.2, as open code cites it: at 44.1 kHz as many samples as at 48 kHz; a time that is none of the list is rounded to the nearest sample.
    private static long PacketSamples(long rate, long microseconds)
    {
        if (rate is not (11_025 or 22_050 or 44_100 or 88_200 or 176_400 or 352_800))
            return Up(rate * microseconds, 1_000_000);

        long[] usual = [125, 250, 333, 334, 1000, 4000];
        return usual.Contains(microseconds) ? Up(rate * 160 / 147 * microseconds, 1_000_000) : Math.Max(1, ((rate * microseconds) + 500_000) / 1_000_000);
    }

    private static long Up(long number, long by) => (number + by - 1) / by;

    private static int Depth(Dictionary<int, (int Parent, Id<Link> Link, bool IsForward)> reached, int node)
    {
        var depth = 0;
        for (var at = node; reached[at].Parent >= 0; at = reached[at].Parent)
            depth++;

        return depth;
    }

    private List<(Link Link, int Other, bool IsForward)> Edges(Id<Network> network, int node)
    {
        if (!edges.TryGetValue((network, node), out var list))
            edges.Add((network, node), list = []);

        return list;
    }

    // Slots that live on one jack use only that jack.
    private List<int> Jacks(GroupFacts slots) =>
        slots.Model.Carrier is { } carrier
            ? nodes.TryGetValue(new Point(slots.Device.Model.Id, carrier.Group, carrier.First), out var node)
                ? [node]
                : []
            : nodesOf.GetValueOrDefault(slots.Device.Model.Id) ?? [];

    private void AddJacks(DeviceFacts device)
    {
        var list = new List<int>();
        foreach (var group in device.Groups.Where(group => group.Kind == PortKind.Network))
        {
            for (var number = 1; number <= group.Count; number++)
            {
                var bridge = group.Model.Bridged.FirstOrDefault(bridged => number > bridged.Jacks.First && number <= bridged.Jacks.Last);
                var node = bridge is not null && nodes.TryGetValue(group.At(bridge.Jacks.First), out var first) ? first : nodes.Count + 1;
                nodes.TryAdd(group.At(number), node);
                if (!list.Contains(node))
                    list.Add(node);
            }
        }

        nodesOf.TryAdd(device.Model.Id, list);
    }
}
