using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Hearing;

/// <summary>Reports outputs that an in-ear feed and a feed of another role both use.</summary>
/// <remarks>
/// Pins count where they are decided, so a pin behind a cable counts at the output. One finding for each pair of feeds; the rules about single feeds leave
/// these pins out.
/// </remarks>
public sealed class InEarShared : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR9002",
            Name = "in-ear-shared",
            Title = "In-ear output with a second task",
            Family = RuleFamily.Hearing,
            Severity = Severity.Error,
            Checks = "An output that serves an in-ear feed serves no feed of another role.",
            Why = "What is turned up for a loudspeaker, or re-patched for a recorder, is turned up and re-patched in somebody's ears too.",
            Remedy = "Give the in-ear feed an output of its own before anybody puts the earpieces in. Sound exposure limits and local rules apply.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        context.LookedAt(EarFeeds.Of(context).Count);
        if (EarFeeds.Of(context).Shared.Count == 0)
        {
            return;
        }

        var ears = new Dictionary<int, List<FeedNode>>();
        foreach (var (point, feed) in FeedPoints.Of(context))
        {
            if (feed.Model.Role == FeedRole.InEar)
            {
                (ears.TryGetValue(point.Value, out var known) ? known : ears[point.Value] = []).Add(feed);
            }
        }

        // The lowest of the points they share, so that the order of feeds and entries does not matter.
        var shared = new SortedDictionary<(int Other, int Ear), (PointIndex Point, FeedNode Other, FeedNode Ear)>();
        foreach (var (point, feed) in FeedPoints.Of(context))
        {
            foreach (var ear in feed.Model.Role == FeedRole.InEar ? [] : ears.GetValueOrDefault(point.Value) ?? [])
            {
                if (!shared.TryGetValue((feed.Index, ear.Index), out var known) || point < known.Point)
                {
                    shared[(feed.Index, ear.Index)] = (point, feed, ear);
                }
            }
        }

        foreach (var (point, feed, ear) in shared.Values)
        {
            var at = context.Address(point);
            context.Report(
                $"{at} serves in-ear feed '{ear.DisplayName}' and, in the role {feed.Model.Role}, '{feed.DisplayName}'.",
                $"/feeds/{feed.Index}/to",
                Entity.Of("output", at),
                Entity.Of("in-ear", ear.Model.Id),
                Entity.Of("feed", feed.Model.Id)
            );
        }
    }
}
