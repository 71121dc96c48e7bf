using RoutingRules.Checking.Facts.Hearing;
using RoutingRules.Checking.Facts.Points;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>Loudspeakers at which talkback, click or comms sounds although no feed has it there.</summary>
internal sealed class PrivateSounds
{
    private readonly PointSet? ways;

    private PrivateSounds(RuleContext context)
    {
        var intentions = Intentions.Of(context);
        PointSet? claimed = null;
        foreach (var feed in context.Feeds)
        {
            for (var position = 0; !feed.Source.IsNone && FeedRoles.IsPrivate(feed.Model.Role) && position < feed.Width; position++)
            {
                var bus = feed.Source + position;
                if (!ForbiddenContent.IsPrivateBus(intentions, bus) || intentions.FeedsOf(bus)[0].Feed != feed || !context.Loudspeakers.Contains(bus))
                {
                    continue;
                }

                claimed ??= EarFeeds.Claimed(context);
                foreach (var end in context.Loudspeakers.Behind(bus))
                {
                    if (SignalPaths.To(context, end).Find(way => way.Contains(bus) && !way.Exists(point => claimed.Contains(point.Value))) is { } way)
                    {
                        Found.Add((feed, end, bus));
                        ways ??= new PointSet(context.PointCount);
                        way.ForEach(point => ways.Add(point.Value));
                    }
                }
            }
        }
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static PrivateSounds Of(RuleContext context) => context.Shared(static asking => new PrivateSounds(asking));

    /// <summary>The feed, the loudspeaker and the bus, in the order of feeds.</summary>
    public List<(FeedNode Feed, PointIndex End, PointIndex Bus)> Found { get; } = [];

    /// <summary>True for a point from which it gets to such a loudspeaker.</summary>
    public bool IsOnWay(PointIndex point) => ways?.Contains(point.Value) == true;
}
