using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports links that carry more stream traffic in one direction than may be reserved on them.</summary>
/// <remarks>
/// A stream counts once on each link of its tree and direction, at its full rate however few of its slots are used. One finding for each link and
/// direction; entities are the link, the device at which the direction starts, and the streams. A link without a speed that carries streams leaves the rule
/// undecided; a digital
/// multicore carries what its standard says and is not judged.
/// </remarks>
public sealed class LinkReservationExceeded : Rule<ResolvedShow>
{
    private const int Named = 3;

    /// <summary>How much may be reserved; assignments observe the same number.</summary>
    internal static RuleOption MaximumPercent { get; } =
        new()
        {
            Name = "maximumPercent",
            Doc = "How many percent of a link's speed streams may take in one direction.",
            Default = 75,
            Minimum = 1,
            Maximum = 100,
        };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5002",
            Name = "link-reservation-exceeded",
            Title = "Link carries too much",
            Family = RuleFamily.Network,
            Severity = Severity.Error,
            Checks = "In each direction of every link the streams take no more than a share of its speed; a stream to many receivers counts once on a link.",
            Why = "Streams beyond the share are refused or lose packets, and every stream on the link crackles, not only the last one.",
            Remedy = "Take unused streams away, let fewer streams cross the link, or use a faster link.",
            Source = "IEEE 802.1Q, clause 34.3 (from memory): 75 % for reserved traffic",
            Fixability = Fixability.Manual,
            Options = [MaximumPercent],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var traffic = new LinkTraffic(context.Network, context.Links.Count);
        foreach (var stream in context.Streams)
        {
            if (
                stream.State == ConnectionState.Connected
                && context.Network.IndexOf(stream.Model.Network) is >= 0 and var network
                && context.Network.HasLinks(network)
            )
            {
                Add(context, network, stream, traffic);
            }
        }

        var share = context.Value(MaximumPercent);
        var unstated = new List<string>();
        foreach (var link in context.Links)
        {
            for (var direction = 2 * link.Index; direction < (2 * link.Index) + 2; direction++)
            {
                if (link.Model.SpeedMbps is null && traffic.On(direction) > 0 && !unstated.Contains(link.Model.Id.Value) && IsEthernet(context, link))
                {
                    unstated.Add(link.Model.Id.Value);
                }

                context.LookedAt(link.Model.SpeedMbps is not null && traffic.On(direction) > 0 ? 1 : 0);
                if (link.Model.SpeedMbps is { } speed && traffic.On(direction) > speed * 10_000.0 * share)
                {
                    Report(context, link, direction, share, traffic);
                }
            }
        }

        if (unstated.Count > 0)
        {
            var (links, carry) = unstated.Count == 1 ? ("Link", "carries") : ("Links", "carry");
            context.CouldNotDecide($"{links} {Wording.Names(unstated)} {carry} streams, but no speed is stated: whether they fit is not known.");
        }
    }

    private static bool IsEthernet(RuleContext context, LinkNode link) => context.Rig.Networks[link.Network].Transport != Transport.PointToPoint;

    private static void Add(RuleContext context, int network, StreamNode stream, LinkTraffic traffic)
    {
        var sender = context.DeviceOf(stream.From);
        if (LinkTraffic.Rate(context.Rig, network, sender, stream.Model.From.Width) is not { } rate)
        {
            context.CouldNotDecide(TransportData.Unknown(context.Rig.Networks[network]));
            return;
        }

        foreach (var receiver in stream.Receivers)
        {
            if (receiver.State == ConnectionState.Connected)
            {
                traffic.Add(stream.Index, network, sender, context.DeviceOf(receiver.At), rate);
            }
        }
    }

    private static void Report(RuleContext context, LinkNode link, int direction, double share, LinkTraffic traffic)
    {
        var streams = traffic.Crossings.Where(crossing => crossing.Direction == direction).ToList();
        streams.Sort((x, y) => x.Rate != y.Rate ? y.Rate.CompareTo(x.Rate) : x.Stream - y.Stream);
        var names = new List<string>();
        for (var i = 0; i < streams.Count && i < Named; i++)
        {
            names.Add(string.Create(CultureInfo.InvariantCulture, $"'{context.Streams[streams[i].Stream].Model.Id}' with {Megabits(streams[i].Rate)}"));
        }

        var (from, to) = direction % 2 == 0 ? (link.Model.From.Device, link.Model.To.Device) : (link.Model.To.Device, link.Model.From.Device);
        var biggest = streams.Count > Named ? "the biggest are" : "they are";
        var streamWord = streams.Count == 1 ? "stream" : "streams";
        context.Report(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Link '{link.Model.Id}' carries {Megabits(traffic.On(direction))} from {from} to {to} in {streams.Count} {streamWord}, "
                    + $"but {share:0.#} % of its {link.Model.SpeedMbps} Mbit/s are {Megabits(link.Model.SpeedMbps.GetValueOrDefault() * 10_000.0 * share)}: "
                    + $"{(streams.Count == 1 ? "it is" : biggest)} {Wording.List(names)}."
            ),
            $"/rig/links/{link.Index}",
            [
                Entity.Of("link", link.Model.Id),
                Entity.Of("from", from),
                .. streams.Select(crossing => Entity.Of("stream", context.Streams[crossing.Stream].Model.Id)).Distinct(),
            ]
        );
    }

    private static string Megabits(double bits) => string.Create(CultureInfo.InvariantCulture, $"{bits / 1_000_000:0.##} Mbit/s");
}
