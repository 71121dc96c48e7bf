using System.Globalization;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports fill and delay loudspeakers that the path makes later than the mains, where no delay was set on purpose.</summary>
/// <remarks>One finding for each feed; the entity is the feed. Only places at which something plays are compared, and the latest main counts.</remarks>
public sealed class FillSlower : Rule<ResolvedShow>
{
    private static readonly RuleOption MaximumMilliseconds = new()
    {
        Name = "maximumMilliseconds",
        Doc = "How much later than the mains a fill or delay feed may arrive by its path alone.",
        Default = 1,
        Minimum = 0.01,
        Maximum = 1000,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5014",
            Name = "fill-slower",
            Title = "Fill or delay path slower than the mains",
            Family = RuleFamily.Network,
            Severity = Severity.Note,
            Checks = "A fill or delay feed arrives no more than 1 ms later than the mains by its path, unless its delay is stated.",
            Why = "Delays are set from distances: what the path adds comes on top, and where fill and mains overlap voices blur.",
            Remedy = "Measure there, take the difference off the delay that is set, and write the delay into the feed as delayMilliseconds.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
            Options = [MaximumMilliseconds],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        List<FeedArrival>? mains = null;
        foreach (var feed in context.Feeds)
        {
            if ((feed.Model.Role != FeedRole.Fill && feed.Model.Role != FeedRole.Delay) || feed.Model.DelayMilliseconds is not null)
            {
                continue;
            }

            var isPartial = false;
            var fills = FeedArrival.Of(context, subject, feed, ref isPartial);
            fills.RemoveAll(arrival => !arrival.IsHeard(context));
            mains ??= Mains(context, subject);
            if (fills.Count == 0 || mains.Count == 0)
            {
                continue;
            }

            context.LookedAt();
            var last = fills.MaxBy(arrival => arrival.Milliseconds);
            var main = mains.MaxBy(arrival => arrival.Milliseconds);
            if (last.Milliseconds - main.Milliseconds > context.Value(MaximumMilliseconds) + 1e-9)
            {
                context.Report(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"'{feed.DisplayName}' arrives at {last.Name(context)} {last.Milliseconds - main.Milliseconds:0.##} ms later than the mains at "
                            + $"{main.Name(context).TrimEnd(',')}, and no delay is stated for it."
                    ),
                    $"/feeds/{feed.Index}",
                    Entity.Of("feed", feed.Model.Id)
                );
            }
        }
    }

    private static List<FeedArrival> Mains(RuleContext context, ResolvedShow subject)
    {
        var mains = new List<FeedArrival>();
        var isPartial = false;
        foreach (var feed in context.Feeds)
        {
            if (feed.Model.Role == FeedRole.Main)
            {
                mains.AddRange(FeedArrival.Of(context, subject, feed, ref isPartial));
            }
        }

        mains.RemoveAll(arrival => !arrival.IsHeard(context));
        return mains;
    }
}
