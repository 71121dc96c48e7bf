using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Resilience;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Resilience;

/// <summary>Reports feeds that should not fall silent together and hang on one supply.</summary>
/// <remarks>
/// A set, all mains and all in-ear feeds are told when they end on two devices or more which all have one and the same supply; where they end on one device the
/// device is the weak point, not its supply. A backup is told when it ends on the same supply as the feed it backs up and no place of the one has a place of
/// the other
/// beside it; else the rule about backups tells it. Nothing is judged in a rig that names
/// fewer than two supplies, nor of devices of which one names none. Entities are the supply and the set, role or two feeds.
/// </remarks>
public sealed class PowerShared : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR8002",
            Name = "power-shared",
            Title = "Everything on one supply",
            Family = RuleFamily.Resilience,
            Severity = Severity.Warning,
            Checks = "The devices at which a set, all mains, all in-ear feeds, or a feed and its backup end do not all hang on one supply.",
            Why = "One tripped breaker takes all of them, and the second box that was meant to save the show is dark as well.",
            Remedy = "Plug one of the devices into another supply, or move one of the feeds to a device that has another.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (!Supplies.HasTwo(context))
        {
            return;
        }

        foreach (var group in FeedGroups.Of(context))
        {
            CheckGroup(context, group);
        }

        Dictionary<Id<Feed>, FeedNode>? feeds = null;
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.BackupOf is { } id && (feeds ??= FeedPairs.ById(context)).TryGetValue(id, out var backed) && backed != feed)
            {
                CheckBackup(context, feed, backed);
            }
        }
    }

    private static void CheckGroup(RuleContext context, FeedGroups group)
    {
        var devices = new List<DeviceNode>();
        var ended = 0;
        foreach (var feed in group.Feeds)
        {
            ended += AddEnds(context, feed, devices) ? 1 : 0;
        }

        context.LookedAt(ended > 1 && Supplies.AreStated(devices) ? 1 : 0);
        if (ended > 1 && devices.Count > 1 && Supplies.Common(devices) is { } supply)
        {
            context.Report(
                $"{char.ToUpperInvariant(group.Title[0])}{group.Title[1..]} {(group.Kind == "set" ? "hangs" : "hang")} on supply '{supply}': "
                    + $"{Names(devices)} have no other.",
                $"/feeds/{group.Feeds[0].Index}",
                Entity.Of("supply", supply),
                Entity.Of(group.Kind, group.Name)
            );
        }
    }

    private static void CheckBackup(RuleContext context, FeedNode feed, FeedNode backed)
    {
        var devices = new List<DeviceNode>();
        var isJudged = !FeedPairs.Each(context, feed, backed).Any() && AddEnds(context, feed, devices) && AddEnds(context, backed, devices);
        context.LookedAt(isJudged && Supplies.AreStated(devices) ? 1 : 0);
        if (isJudged && Supplies.Common(devices) is { } supply)
        {
            var have = devices.Count == 1 ? $"{Names(devices)} has" : $"{Names(devices)} have";
            context.Report(
                $"Feed '{feed.DisplayName}' backs up '{backed.DisplayName}', but both hang on supply '{supply}': {have} no other.",
                $"/feeds/{feed.Index}/backupOf",
                Entity.Of("supply", supply),
                Entity.Of("feed", backed.Model.Id),
                Entity.Of("backup", feed.Model.Id)
            );
        }
    }

    private static bool AddEnds(RuleContext context, FeedNode feed, List<DeviceNode> devices)
    {
        var isDelivered = false;
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            if (context.Demand(feed, entry).Existing is { IsNone: false } at)
            {
                isDelivered = true;
                if (context.DeviceOf(at) is var device && !devices.Contains(device))
                {
                    devices.Add(device);
                }
            }
        }

        return isDelivered;
    }

    private static string Names(List<DeviceNode> devices)
    {
        var names = devices.ConvertAll(device => device.Id.Value);
        names.Sort(StringComparer.Ordinal);
        return Wording.List(names);
    }
}
