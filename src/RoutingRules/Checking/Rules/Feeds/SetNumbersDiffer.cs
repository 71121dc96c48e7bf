using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports sets whose parts sit on different devices with different numbers.</summary>
/// <remarks>One finding for each set; entities are the set and its feeds that differ.</remarks>
public sealed class SetNumbersDiffer : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3007",
            Name = "set-numbers-differ",
            Title = "Parts of a set on different numbers",
            Family = RuleFamily.Feeds,
            Severity = Severity.Note,
            Checks = "Parts of a set that sit on different devices have the same number on each.",
            Why = "Two people who plug left and right without a sheet plug the same number on both sides.",
            Remedy = "Move one part to the number of the other, or leave it if the sheets say so.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        foreach (var (name, feeds) in FeedSets.Of(context))
        {
            context.LookedAt();
            var entries = 0;
            foreach (var feed in feeds)
            {
                entries = Math.Max(entries, feed.Model.To.Count);
            }

            var broken = new List<DemandNode>();
            for (var entry = 0; entry < entries; entry++)
            {
                AddBroken(context, feeds, entry, broken);
            }

            if (broken.Count > 0)
            {
                var places = broken.ConvertAll(demand => $"{FeedSets.PartName(demand.Feed!)} at {context.Address(demand.Existing, demand.Width)}");
                context.Report(
                    $"The parts of set '{name}' have different numbers: {Wording.List(places)}.",
                    $"/feeds/{broken[0].Feed!.Index}/to/{broken[0].Entry}",
                    FeedSets.Entities(name, broken.Select(demand => demand.Feed!).Distinct())
                );
            }
        }
    }

    /// <summary>Adds the demands of one entry position that differ in device and number from one of another part.</summary>
    private static void AddBroken(RuleContext context, List<FeedNode> feeds, int entry, List<DemandNode> broken)
    {
        var placed = new List<(DemandNode Demand, DeviceNode Device, int Number)>();
        var isUniform = true;
        foreach (var feed in feeds)
        {
            if (entry < feed.Model.To.Count && context.Demand(feed, entry) is { Existing.IsNone: false } demand)
            {
                placed.Add((demand, context.DeviceOf(demand.Existing), context.NumberOf(demand.Existing)));
                isUniform &= placed[^1].Number == placed[0].Number;
            }
        }

        for (var i = 0; !isUniform && i < placed.Count; i++)
        {
            if (
                placed.Exists(other =>
                    other.Device != placed[i].Device
                    && other.Number != placed[i].Number
                    && !string.Equals(other.Demand.Feed!.Model.Part, placed[i].Demand.Feed!.Model.Part, StringComparison.Ordinal)
                )
            )
            {
                broken.Add(placed[i].Demand);
            }
        }
    }
}
