using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports streams that no chain of links takes from sender to receiver.</summary>
/// <remarks>
/// The signal graph lets a stream connect its slots whatever the links, so that rules on feeds, lines and outputs judge the patch as set: they do not
/// speak of missing links, this rule alone does. One finding for each two islands of a network that are not joined; entities are the network and, of the
/// devices of either part, the one whose id comes first.
/// </remarks>
public sealed class PathMissing : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5001",
            Name = "path-missing",
            Title = "No path over the links",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Checks =
                "The links of a stream's network lead from its sender to each of its receivers; where a network has no links in the document, both "
                + "have a network jack.",
            Why = "Everything is patched right and nothing arrives: the stream is set at both ends, but no cable joins them.",
            Remedy = "Draw the missing link, plug it into jacks of that network, or move the stream to a network that joins both devices.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var gaps = new List<Gap>();
        var islands = new Dictionary<(int Network, int Device), Id<Device>>();
        var map = context.Network;
        foreach (var stream in context.Streams)
        {
            if (stream.State != ConnectionState.Connected || map.IndexOf(stream.Model.Network) is not (>= 0 and var network))
            {
                continue;
            }

            var sender = context.DeviceOf(stream.From);
            foreach (var receiver in stream.Receivers)
            {
                context.LookedAt(receiver.State == ConnectionState.Connected ? 1 : 0);
                if (receiver.State == ConnectionState.Connected && context.DeviceOf(receiver.At) is var device && !map.Joins(network, sender, device))
                {
                    Add(context, gaps, islands, network, sender, device, stream, $"/patch/streams/{stream.Index}/to/{receiver.Index}");
                }
            }
        }

        foreach (var gap in gaps)
        {
            Report(context, gap);
        }
    }

    private static void Add(
        RuleContext context,
        List<Gap> gaps,
        Dictionary<(int Network, int Device), Id<Device>> islands,
        int network,
        DeviceNode sender,
        DeviceNode receiver,
        StreamNode stream,
        string pointer
    )
    {
        var one = Island(context, islands, network, sender);
        var other = Island(context, islands, network, receiver);
        var (low, high) = one.CompareTo(other) <= 0 ? (one, other) : (other, one);
        var gap = gaps.Find(known => known.Network == network && known.Low == low && known.High == high);
        if (gap is null)
        {
            // A link that names what does not exist is told elsewhere, and may be the very one that is missing here.
            if (IsTold(context, network, sender, receiver))
            {
                return;
            }

            gaps.Add(
                gap = new Gap
                {
                    Network = network,
                    Low = low,
                    High = high,
                    Pointer = pointer,
                }
            );
        }

        AddOnce(gap.Streams, $"'{stream.Model.Id}'");
        AddOnce(gap.Ways, $"from {sender.Id} to {receiver.Id}");
        if (!HasJack(context, sender))
        {
            AddOnce(gap.WithoutJack, sender.Id.Value);
        }

        if (!HasJack(context, receiver))
        {
            AddOnce(gap.WithoutJack, receiver.Id.Value);
        }
    }

    private static void Report(RuleContext context, Gap gap)
    {
        var network = context.Rig.Networks[gap.Network].Id;
        var one = gap.Streams.Count == 1;
        var why =
            gap.WithoutJack.Count == 0
                ? "no links lead there"
                : $"{Wording.List(gap.WithoutJack)} {(gap.WithoutJack.Count == 1 ? "has" : "have")} no network jack";
        context.Report(
            $"{(one ? "Stream" : "Streams")} {Wording.List(gap.Streams)} cannot get {Wording.List(gap.Ways)} on network '{network}': {why}.",
            gap.Pointer,
            Entity.Of("network", network),
            Entity.Of("device", gap.Low),
            Entity.Of("device", gap.High)
        );
    }

    /// <summary>The first device, by id, of those a device is joined with.</summary>
    private static Id<Device> Island(RuleContext context, Dictionary<(int Network, int Device), Id<Device>> islands, int network, DeviceNode device)
    {
        if (islands.TryGetValue((network, device.Index), out var first))
        {
            return first;
        }

        first = device.Id;
        if (context.Network.HasLinks(network))
        {
            foreach (var other in context.Devices)
            {
                first = other.Id.CompareTo(first) < 0 && context.Network.Joins(network, device, other) ? other.Id : first;
            }
        }

        islands.Add((network, device.Index), first);
        return first;
    }

    private static bool IsTold(RuleContext context, int network, DeviceNode sender, DeviceNode receiver)
    {
        foreach (var link in context.Links)
        {
            if (link.State == ConnectionState.Connected || (link.Network >= 0 && link.Network != network))
            {
                continue;
            }

            var from = context.Device(link.Model.From.Device);
            var to = context.Device(link.Model.To.Device);
            if (Touches(from) || Touches(to) || (from is null && to is null))
            {
                return true;
            }
        }

        return false;

        bool Touches(DeviceNode? end) =>
            end is not null
            && (end == sender || end == receiver || context.Network.Joins(network, sender, end) || context.Network.Joins(network, receiver, end));
    }

    private static bool HasJack(RuleContext context, DeviceNode device) => context.Network.SwitchesOf(device).Length > 0;

    private static void AddOnce(List<string> names, string name)
    {
        if (!names.Contains(name))
        {
            names.Add(name);
        }
    }

    private sealed class Gap
    {
        public required int Network { get; init; }

        public required Id<Device> Low { get; init; }

        public required Id<Device> High { get; init; }

        public required string Pointer { get; init; }

        public List<string> Streams { get; } = [];

        public List<string> Ways { get; } = [];

        public List<string> WithoutJack { get; } = [];
    }
}
