using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Feeds;

/// <summary>Reports single fills that play one side of the stereo mains.</summary>
/// <remarks>
/// The sides are the halves of main feeds two wide, and the buses of feeds that are the left and right part of a set of mains. A fill is single when no other
/// fill plays the other side. One finding for each fill; entities are the fill and the bus.
/// </remarks>
public sealed class FillOneSided : Rule<FeedNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR3018",
            Name = "fill-one-sided",
            Title = "Single fill with one side of the mix",
            Family = RuleFamily.Feeds,
            Severity = Severity.Warning,
            Checks = "A fill that stands alone is not fed with only the left or only the right of the mains.",
            Why = "Whoever sits before it hears what is panned to that side twice and the rest not at all.",
            Remedy = "Feed it with a mono sum, from a bus or matrix of its own.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, FeedNode subject)
    {
        var isFill = subject.Model.Role == FeedRole.Fill && subject.Width == 1 && !subject.Source.IsNone;
        context.LookedAt(isFill ? 1 : 0);
        if (
            isFill
            && context.Shared(static asking => new MainSides(Sides(asking))).Of.TryGetValue(subject.Source.Value, out var side)
            && !IsPlayed(context, side.Other)
        )
        {
            context.Report(
                $"Fill '{subject.DisplayName}' plays only the {side.Side} side of '{side.Of}', and no fill plays the other.",
                $"/feeds/{subject.Index}/source",
                Entity.Of("feed", subject.Model.Id),
                Entity.Of("source", context.Address(subject.Source))
            );
        }
    }

    /// <summary>The buses that are one side of the mains, each with the bus of the other side and the name of the whole.</summary>
    private static Dictionary<int, (string Side, int Other, string Of)> Sides(RuleContext context)
    {
        var sides = new Dictionary<int, (string Side, int Other, string Of)>();
        var lefts = new Dictionary<string, FeedNode>(StringComparer.Ordinal);
        var rights = new Dictionary<string, FeedNode>(StringComparer.Ordinal);
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.Role != FeedRole.Main || feed.Source.IsNone)
            {
                continue;
            }

            if (feed.Width == 2)
            {
                sides.TryAdd(feed.Source.Value, ("left", feed.Source.Value + 1, feed.DisplayName));
                sides.TryAdd(feed.Source.Value + 1, ("right", feed.Source.Value, feed.DisplayName));
            }
            else if (feed is { Width: 1, Model: { Set: { } set, Part: { } part } })
            {
                if (string.Equals(part, "left", StringComparison.OrdinalIgnoreCase))
                {
                    lefts.TryAdd(set, feed);
                }
                else if (string.Equals(part, "right", StringComparison.OrdinalIgnoreCase))
                {
                    rights.TryAdd(set, feed);
                }
            }
        }

        foreach (var (set, left) in lefts)
        {
            if (rights.TryGetValue(set, out var right) && left.Source != right.Source)
            {
                sides.TryAdd(left.Source.Value, ("left", right.Source.Value, set));
                sides.TryAdd(right.Source.Value, ("right", left.Source.Value, set));
            }
        }

        return sides;
    }

    private static bool IsPlayed(RuleContext context, int bus)
    {
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.Role == FeedRole.Fill && !feed.Source.IsNone && feed.Source.Value <= bus && bus < feed.Source.Value + feed.Width)
            {
                return true;
            }
        }

        return false;
    }

    private sealed record MainSides(Dictionary<int, (string Side, int Other, string Of)> Of);
}
