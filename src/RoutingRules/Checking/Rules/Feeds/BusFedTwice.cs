using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports buses that two feeds of one role send to one zone.</summary>
/// <remarks>A feed and its backup are exempt, and so are feeds for different people or packs. One finding for each set of feeds, role and zone.</remarks>
public sealed class BusFedTwice : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3010",
            Name = "bus-fed-twice",
            Title = "One bus in two feeds for the same place",
            Family = RuleFamily.Feeds,
            Severity = Severity.Note,
            Checks = "No two feeds with the same role and zone name the same bus, unless one backs up the other or they are for different people or packs.",
            Why = "Two feeds for one thing drift apart: one is moved or renamed, the other stays.",
            Remedy = "Make it one feed with several destinations, or give the second its own bus.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var intentions = Intentions.Of(context);
        var feedsAt = new Dictionary<(int Bus, string Role, string Zone), (FeedNode First, List<FeedNode>? All)>();
        var doubled = new List<(string Zone, List<FeedNode> Feeds)>();
        var zones = new List<string>();
        foreach (var feed in context.Feeds)
        {
            for (var position = 0; !feed.Source.IsNone && position < feed.Width; position++)
            {
                context.LookedAt();
                if (intentions.FeedsOf(feed.Source + position).Length < 2)
                {
                    continue;
                }

                Collect(context, feed, zones);
                foreach (var zone in zones)
                {
                    Add(feedsAt, doubled, (feed.Source.Value + position, feed.Model.Role.Value, zone), feed);
                }
            }
        }

        var once = new OnceOnly(context);
        foreach (var (zone, feeds) in doubled)
        {
            var names = feeds.ConvertAll(feed => $"'{feed.DisplayName}'");
            var ids = feeds.ConvertAll(feed => feed.Model.Id);
            ids.Sort();
            once.Report(
                $"Feeds {Wording.List(names)} send the same bus to {zone} in the role {feeds[0].Model.Role}.",
                $"/feeds/{feeds[^1].Index}/source",
                [.. ids.ConvertAll(id => Entity.Of("feed", id)), Entity.Of("zone", zone), Entity.Of("role", feeds[0].Model.Role.Value)]
            );
        }
    }

    private static void Add(
        Dictionary<(int Bus, string Role, string Zone), (FeedNode First, List<FeedNode>? All)> feedsAt,
        List<(string Zone, List<FeedNode> Feeds)> doubled,
        (int Bus, string Role, string Zone) key,
        FeedNode feed
    )
    {
        if (!feedsAt.TryGetValue(key, out var known))
        {
            feedsAt.Add(key, (feed, null));
            return;
        }

        var feeds = known.All ?? [known.First];
        if (feeds.Exists(other => IsBackup(other, feed) || IsBackup(feed, other) || AreForTwo(other, feed)))
        {
            return;
        }

        feeds.Add(feed);
        if (feeds.Count == 2)
        {
            feedsAt[key] = (known.First, feeds);
            doubled.Add((key.Zone, feeds));
        }
    }

    private static bool IsBackup(FeedNode feed, FeedNode of) => feed.Model.BackupOf == of.Model.Id;

    /// <summary>True for one mix on purpose: two people, or two packs, listen to it.</summary>
    private static bool AreForTwo(FeedNode one, FeedNode other) => Differ(one.Model.Person, other.Model.Person) || Differ(one.Model.Pack, other.Model.Pack);

    private static bool Differ(string? one, string? other) =>
        !string.IsNullOrWhiteSpace(one) && !string.IsNullOrWhiteSpace(other) && !string.Equals(one.Trim(), other.Trim(), StringComparison.OrdinalIgnoreCase);

    /// <summary>The zones of a feed's destinations, each once, in order.</summary>
    private static void Collect(RuleContext context, FeedNode feed, List<string> zones)
    {
        zones.Clear();
        foreach (var to in feed.Model.To)
        {
            foreach (var zone in to.Zones)
            {
                AddZone(zones, zone.Value);
            }

            foreach (var id in to.Devices)
            {
                AddZone(zones, context.Device(id)?.Zone?.Id.Value);
            }

            if (to.At is { } at)
            {
                AddZone(zones, context.Device(at.Device)?.Zone?.Id.Value);
            }
        }
    }

    private static void AddZone(List<string> zones, string? zone)
    {
        if (zone is not null && !zones.Contains(zone))
        {
            zones.Add(zone);
        }
    }
}
