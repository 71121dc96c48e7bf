using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports streams that walk over more links than class A, class B or one of their devices allows.</summary>
/// <remarks>
/// One finding for each network; entities are the network, the ways beyond a limit and the streams on them. It names the longest way and how many more there
/// are.
/// </remarks>
public sealed class HopsExceeded : Rule<ResolvedShow>
{
    private static readonly RuleOption MaximumHops = new()
    {
        Name = "maximumHops",
        Doc = "How many links a stream in class A or B may walk over.",
        Default = 7,
        Minimum = 1,
        Maximum = 64,
        IsWhole = true,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5003",
            Name = "hops-exceeded",
            Title = "Too many hops",
            Family = RuleFamily.Network,
            Severity = Severity.Warning,
            Checks = "Streams in class A and B walk over 7 links at most; where a device states how many hops it allows, its streams keep to that.",
            Why = "The 2 ms that class A promises, and the 50 ms of class B, hold for 7 hops; beyond them packets come too late for a receiver and drop out.",
            Remedy = "Shorten the chain: join its ends to a switch in the middle, or hang boxes off a switch instead of off each other.",
            Source = "IEEE 802.1BA: 2 ms over 7 hops in class A, 50 ms over 7 hops in class B (the latter from memory); the device's profile",
            Fixability = Fixability.None,
            Options = [MaximumHops],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var worst = new Way?[context.Rig.Networks.Count];
        var ways = new HashSet<(int Network, int From, int To)>();
        var members = new HashSet<(int Network, Entity Entity)>();
        var map = context.Network;
        foreach (var stream in context.Streams)
        {
            if (stream.State != ConnectionState.Connected || map.IndexOf(stream.Model.Network) is not (>= 0 and var network) || !map.HasLinks(network))
            {
                continue;
            }

            var sender = context.DeviceOf(stream.From);
            foreach (var receiver in stream.Receivers)
            {
                if (receiver.State != ConnectionState.Connected || context.DeviceOf(receiver.At) is not { } device || device == sender)
                {
                    continue;
                }

                var hops = Hops(map, network, sender, device);
                var (limit, because) = Limit(context, network, sender, device);
                context.LookedAt(limit < int.MaxValue ? 1 : 0);
                if (hops <= limit)
                {
                    continue;
                }

                members.Add((network, Entity.Of("stream", stream.Model.Id)));
                if (!ways.Add((network, sender.Index, device.Index)))
                {
                    continue;
                }

                members.Add((network, Entity.Of("way", $"{sender.Id} to {device.Id}")));

                var way = worst[network] ??= new Way
                {
                    Stream = stream.Index,
                    From = sender,
                    To = device,
                    Hops = hops,
                    Limit = limit,
                    Because = because,
                };
                worst[network] =
                    hops > way.Hops
                        ? new Way
                        {
                            Stream = stream.Index,
                            From = sender,
                            To = device,
                            Hops = hops,
                            Limit = limit,
                            Because = because,
                            Ways = way.Ways + 1,
                        }
                        : way with
                        {
                            Ways = way.Ways + 1,
                        };
            }
        }

        for (var network = 0; network < worst.Length; network++)
        {
            if (worst[network] is { } way)
            {
                Report(context, network, way, members.Where(member => member.Network == network).Select(member => member.Entity));
            }
        }
    }

    private static void Report(RuleContext context, int network, Way way, IEnumerable<Entity> members)
    {
        var id = context.Rig.Networks[network].Id;
        var more = way.Ways == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" {way.Ways} paths on this network are too long; this is the longest.");
        context.Report(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Stream '{context.Streams[way.Stream].Model.Id}' walks over {way.Hops} links from {way.From.Id} to {way.To.Id} on network '{id}', "
                    + $"but {way.Because} {way.Limit}.{more}"
            ),
            $"/patch/streams/{way.Stream}",
            [Entity.Of("network", id), .. members]
        );
    }

    private static int Hops(NetworkMap map, int network, DeviceNode from, DeviceNode to)
    {
        var tree = map.Tree(network, from);
        var hops = 0;
        for (var at = map.End(tree, to); at >= 0 && tree[at] >= 0; at = map.Other(tree[at], at))
        {
            hops++;
        }

        return hops;
    }

    private static (int Limit, string Because) Limit(RuleContext context, int network, DeviceNode from, DeviceNode to)
    {
        var limit = int.MaxValue;
        var because = "";
        var transport = context.Rig.Networks[network].Transport;
        if (transport == Transport.AvtpClassA || transport == Transport.AvtpClassB)
        {
            (limit, because) = (context.WholeValue(MaximumHops), transport == Transport.AvtpClassA ? "class A allows" : "class B allows");
        }

        foreach (var device in (ReadOnlySpan<DeviceNode>)[from, to])
        {
            if (device.Profile.Limits?.Hops < limit)
            {
                (limit, because) = (device.Profile.Limits.Hops.Value, $"{device.Id} allows");
            }
        }

        return (limit, because);
    }

    private sealed record Way
    {
        public required int Stream { get; init; }

        public required DeviceNode From { get; init; }

        public required DeviceNode To { get; init; }

        public required int Hops { get; init; }

        public required int Limit { get; init; }

        public required string Because { get; init; }

        public int Ways { get; init; }
    }
}
