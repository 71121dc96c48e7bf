using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports sets whose parts name different numbers of destinations.</summary>
/// <remarks>One finding for each set; entities are the set and its feeds.</remarks>
public sealed class SetEntriesUnequal : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3009",
            Name = "set-entries-unequal",
            Title = "Parts of a set with different numbers of destinations",
            Family = RuleFamily.Feeds,
            Severity = Severity.Note,
            Checks = "All parts of a set name the same number of destinations, so that first belongs with first and second with second.",
            Why = "A left without its right is one forgotten loudspeaker, and what belongs together can no longer be compared.",
            Remedy = "Add the destination that is missing, or take the part that stands alone out of the set.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        foreach (var (name, feeds) in FeedSets.Of(context))
        {
            context.LookedAt();
            if (FirstUnequal(feeds) is { } unequal)
            {
                var counts = feeds.ConvertAll(feed => string.Create(CultureInfo.InvariantCulture, $"{FeedSets.PartName(feed)} has {feed.Model.To.Count}"));
                context.Report(
                    $"The parts of set '{name}' have different numbers of destinations: {Wording.List(counts)}.",
                    $"/feeds/{unequal.Index}/to",
                    FeedSets.Entities(name, feeds)
                );
            }
        }
    }

    /// <summary>The first feed of a set that has another number of destinations than an earlier feed of another part; null when there is none.</summary>
    private static FeedNode? FirstUnequal(List<FeedNode> feeds)
    {
        for (var i = 1; i < feeds.Count; i++)
        {
            for (var other = 0; feeds[i].Model.To.Count != feeds[0].Model.To.Count && other < i; other++)
            {
                if (
                    feeds[other].Model.To.Count != feeds[i].Model.To.Count
                    && !string.Equals(feeds[other].Model.Part, feeds[i].Model.Part, StringComparison.Ordinal)
                )
                {
                    return feeds[i];
                }
            }
        }

        return null;
    }
}
