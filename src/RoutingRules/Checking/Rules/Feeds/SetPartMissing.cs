using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports sets with a left part and no right one, or the other way round.</summary>
public sealed class SetPartMissing : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3017",
            Name = "set-part-missing",
            Title = "Set with one side only",
            Family = RuleFamily.Feeds,
            Severity = Severity.Note,
            Checks = "A set of feeds with a left part has a right part, and the other way round.",
            Why = "Half of a pair in the list is a forgotten feed or a mistyped part; sides and equal numbers cannot be checked for it.",
            Remedy = "Add the other part, or correct the part or the set of this one.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var sides = new SortedDictionary<string, (FeedNode? Left, FeedNode? Right)>(StringComparer.Ordinal);
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.Set is not { } set)
            {
                continue;
            }

            var (left, right) = sides.GetValueOrDefault(set);
            sides[set] = (
                left ?? (string.Equals(feed.Model.Part, "left", StringComparison.OrdinalIgnoreCase) ? feed : null),
                right ?? (string.Equals(feed.Model.Part, "right", StringComparison.OrdinalIgnoreCase) ? feed : null)
            );
        }

        context.LookedAt(sides.Count);
        foreach (var (set, (left, right)) in sides)
        {
            if ((left is null) != (right is null))
            {
                var (here, gone) = left is null ? ("right", "left") : ("left", "right");
                context.Report(
                    $"Set '{set}' has a {here} part and no {gone} part.",
                    $"/feeds/{(left ?? right)!.Index}/part",
                    Entity.Of("set", set),
                    Entity.Of("missing", gone)
                );
            }
        }
    }
}
