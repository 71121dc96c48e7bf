using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports pairs whose halves arrive apart from each other, or of which one half is missing.</summary>
/// <remarks>One finding for each destination; entities are the feed, the points of a pin, then where left and right arrive.</remarks>
public sealed class PairSplit : Rule<FeedNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3005",
            Name = "pair-split",
            Title = "Pair torn apart",
            Family = RuleFamily.Feeds,
            Severity = Severity.Error,
            Checks = "Both halves of a pair arrive, at neighbouring points of one port group of one device.",
            Why = "Halves on two devices arrive at different times and fail apart; half a pair leaves one ear or one side silent.",
            Remedy = "Bring both halves to two neighbouring outputs, left on the odd one.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, FeedNode subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        if (subject.Width != 2)
        {
            context.LookedAt(0);
            return;
        }

        foreach (var entry in FeedDelivery.Entries(context, subject, ExplainedByOtherRule.Of(context)))
        {
            if (entry.State == EntryState.Split)
            {
                ReportSplit(context, subject, entry);
            }
            else if (entry.State == EntryState.Half)
            {
                ReportHalf(context, subject, entry, CauseFinder.Of(context));
            }
        }
    }

    private static void ReportSplit(RuleContext context, FeedNode feed, FeedEntry entry)
    {
        var left = context.Address(entry.Left);
        var right = context.Address(entry.Right);
        context.Report(
            $"The halves of the pair '{feed.DisplayName}' are not neighbours: left comes from {left}, right from {right}.",
            Pointer(feed, entry),
            [.. Place(feed, entry), Entity.Of("left", left), Entity.Of("right", right)]
        );
    }

    private static void ReportHalf(RuleContext context, FeedNode feed, FeedEntry entry, CauseFinder finder)
    {
        var isLeft = !entry.Left.IsNone;
        if (finder.Find(feed, entry, isLeft ? 1 : 0) is not { } cause)
        {
            return;
        }

        var (here, gone) = isLeft ? ("left", "right") : ("right", "left");
        var at = context.Address(isLeft ? entry.Left : entry.Right);
        var source = context.Address(feed.Source + (isLeft ? 1 : 0));
        context.Report(
            $"Only {here} of the pair '{feed.DisplayName}' arrives, at {at}; {gone} ({source}) is missing: {cause.Describe(context)}.",
            Pointer(feed, entry),
            [.. Place(feed, entry), Entity.Of(here, at)]
        );
    }

    /// <summary>The feed and, for a pin, the points it names.</summary>
    private static Entity[] Place(FeedNode feed, FeedEntry entry) =>
        feed.Model.To[entry.Demand.Entry].At is { } at ? [Entity.Of("feed", feed.Model.Id), Entity.Of("at", at)] : [Entity.Of("feed", feed.Model.Id)];

    private static string Pointer(FeedNode feed, FeedEntry entry) => $"/feeds/{feed.Index}/to/{entry.Demand.Entry}";
}
