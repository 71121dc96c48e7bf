using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports backups that fall silent together with what they back up.</summary>
/// <remarks>
/// A link counts only where the rig has another way around it. What the feed's own separation forbids is left to that rule. One finding for each backup.
/// </remarks>
public sealed class BackupShares : Rule<FeedNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3014",
            Name = "backup-shares",
            Title = "Backup on the same box, supply or link",
            Family = RuleFamily.Feeds,
            Severity = Severity.Warning,
            Checks = "A feed that backs up another stands on another device with another supply, and where the rig allows it over other links.",
            Why = "A backup that dies of the same cause is none.",
            Remedy = "Move the backup to a box with its own supply and its own path through the network, or take the claim out that it is a backup.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, FeedNode subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        if (subject.Model.BackupOf is not { } id || id == subject.Model.Id || !FeedPairs.ById(context).TryGetValue(id, out var original))
        {
            context.LookedAt(0);
            return;
        }

        if (Shared(context, new FeedPaths(context), subject, original) is { Count: > 0 } shared)
        {
            context.Report(
                $"'{subject.DisplayName}' backs up '{original.DisplayName}', but both hang on {Wording.List(shared)}.",
                $"/feeds/{subject.Index}/backupOf",
                Entity.Of("feed", subject.Model.Id),
                Entity.Of("backs-up", id)
            );
        }
    }

    private static List<string> Shared(RuleContext context, FeedPaths ways, FeedNode feed, FeedNode original)
    {
        var shared = new List<string>();
        foreach (var (one, other) in FeedPairs.Each(context, feed, original))
        {
            if (ways.Device(one, other) is { } device && !IsSeparated(feed, original, SeparationBy.Device))
            {
                Add(shared, $"'{device.DisplayName}'");
                continue;
            }

            if (ways.Power(one, other) is { } supply && !IsSeparated(feed, original, SeparationBy.Power))
            {
                Add(shared, $"supply '{supply}'");
            }

            foreach (var link in ways.Links(one, other))
            {
                if (!IsSeparated(feed, original, SeparationBy.Link) && (ways.IsAvoidable(link, one) || ways.IsAvoidable(link, other)))
                {
                    Add(shared, $"link '{link.Model.Id}'");
                }
            }
        }

        return shared;
    }

    private static bool IsSeparated(FeedNode one, FeedNode other, SeparationBy by) => Names(one, other, by) || Names(other, one, by);

    private static bool Names(FeedNode feed, FeedNode other, SeparationBy by)
    {
        foreach (var separation in feed.Model.SeparateFrom)
        {
            if (separation.Feed == other.Model.Id && separation.By == by)
            {
                return true;
            }
        }

        return false;
    }

    private static void Add(List<string> shared, string what)
    {
        if (!shared.Contains(what))
        {
            shared.Add(what);
        }
    }
}
