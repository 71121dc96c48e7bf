using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports pairs of feeds and lines that arrive with right first.</summary>
/// <remarks>One finding for each run of two points; entities are the feed or line, then the points.</remarks>
public sealed class PairSwapped : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3004",
            Name = "pair-swapped",
            Title = "Left and right swapped",
            Family = RuleFamily.Feeds,
            Severity = Severity.Error,
            Checks = "The first point of a pair carries left and the second carries right.",
            Why = "Swapped sides put the picture of the stage back to front, and nobody sees it on a meter.",
            Remedy = "Exchange the two routes of the pair.",
            Source = "common practice, no source; the order left then right is that of ST 2110-30 channel group ST (from memory)",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var told = ExplainedByOtherRule.Of(context);
        foreach (var feed in context.Feeds)
        {
            if (feed.Width == 2)
            {
                context.LookedAt();
                CheckFeed(context, feed, told);
            }
        }

        foreach (var line in context.Lines)
        {
            for (var i = 0; line.Width == 2 && i < line.Sinks.Count; i++)
            {
                context.LookedAt();
                if (!line.Sinks[i].IsNone && !line.IsRepeated(i) && SwappedAt(context, context.Demand(line), line.Sinks[i]) is { IsNone: false } from)
                {
                    Report(context, "line", line.Model.Id.Value, line.DisplayName, from, line.Sinks[i], $"/lines/{line.Index}/to/{i}");
                }
            }
        }
    }

    private static void CheckFeed(RuleContext context, FeedNode feed, ExplainedByOtherRule told)
    {
        foreach (var entry in FeedDelivery.Entries(context, feed, told))
        {
            if (entry.State == EntryState.Swapped)
            {
                Report(context, "feed", feed.Model.Id.Value, feed.DisplayName, feed.Source, entry.Right, $"/feeds/{feed.Index}/to/{entry.Demand.Entry}");
            }
        }
    }

    /// <summary>The first of the two points that a sink of a line carries the wrong way round; none when it does not.</summary>
    private static PointIndex SwappedAt(RuleContext context, DemandNode demand, PointIndex sink)
    {
        var left = context.Origin(sink + 1);
        if (!left.IsNone && context.Origin(sink) == left + 1 && FeedPlaces.AllowsRun(demand, left))
        {
            return left;
        }

        for (var i = 0; demand.IsPinned && i < demand.Allowed.Count; i++)
        {
            if (context.IsFedBy(sink, demand.Allowed[i] + 1) && context.IsFedBy(sink + 1, demand.Allowed[i]))
            {
                return demand.Allowed[i];
            }
        }

        return PointIndex.None;
    }

    private static void Report(RuleContext context, string role, string id, string name, PointIndex source, PointIndex at, string pointer)
    {
        var points = context.Address(at, 2);
        context.Report(
            $"The pair '{name}' is swapped at {points}: "
                + $"{points[0]} carries right ({context.Address(source + 1)}) and {points[1]} carries left ({context.Address(source)}).",
            pointer,
            Entity.Of(role, id),
            Entity.Of("points", points)
        );
    }
}
