using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports shows whose critical feeds all hang on one device although another could take one of them.</summary>
public sealed class CriticalShared : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3013",
            Name = "critical-shared",
            Title = "All critical feeds on one device",
            Family = RuleFamily.Feeds,
            Severity = Severity.Warning,
            Checks =
                "The feeds of priority critical, if there are several, are not all on one device while another device has a free output that one "
                + "of them may use.",
            Why = "One dead box, one pulled plug, and everything the show cannot do without is gone at once.",
            Remedy = "Move one of the critical feeds to the other device the finding names.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var critical = new List<FeedNode>();
        DeviceNode? shared = null;
        foreach (var feed in context.Feeds)
        {
            context.LookedAt(feed.Model.Priority == Priority.Critical ? 1 : 0);
            for (var entry = 0; feed.Model.Priority == Priority.Critical && entry < feed.Model.To.Count; entry++)
            {
                var existing = context.Demand(feed, entry).Existing;
                if (existing.IsNone)
                {
                    continue;
                }

                shared ??= context.DeviceOf(existing);
                if (context.DeviceOf(existing) != shared)
                {
                    return;
                }

                if (!critical.Contains(feed))
                {
                    critical.Add(feed);
                }
            }
        }

        if (shared is null || critical.Count < 2 || Other(context, critical, shared) is not { } other)
        {
            return;
        }

        critical.Sort(static (x, y) => x.Model.Id.CompareTo(y.Model.Id));
        context.Report(
            $"All critical feeds are on '{shared.DisplayName}': {Wording.List(critical.ConvertAll(feed => $"'{feed.DisplayName}'"))}. "
                + $"{context.Address(other)} is free and may take one.",
            $"/rig/devices/{shared.Index}",
            [Entity.Of("device", shared.Id), .. critical.ConvertAll(feed => Entity.Of("feed", feed.Model.Id))]
        );
    }

    /// <summary>The first free output on another device that one of the feeds may use.</summary>
    private static PointIndex? Other(RuleContext context, List<FeedNode> critical, DeviceNode shared)
    {
        foreach (var feed in critical)
        {
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                foreach (var run in context.Demand(feed, entry).Allowed)
                {
                    if (context.DeviceOf(run) != shared && IsFree(context, run) && (feed.Width == 1 || IsFree(context, run + 1)))
                    {
                        return run;
                    }
                }
            }
        }

        return null;
    }

    private static bool IsFree(RuleContext context, PointIndex point) =>
        context.DemandAt(point) is null && context.MarkOf(point) is null && context.Fed(point).IsEmpty;
}
