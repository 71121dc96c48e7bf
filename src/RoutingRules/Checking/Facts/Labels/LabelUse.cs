using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Labels;

/// <summary>The points that feeds and lines use as the patch stands, and what they mean there.</summary>
internal sealed class LabelUse
{
    private readonly PointSet used;
    private readonly bool hasFeeds;
    private readonly bool hasLines;

    public LabelUse(RuleContext context)
    {
        used = new PointSet(context.PointCount);
        hasFeeds = context.Feeds.Count > 0;
        hasLines = context.Lines.Count > 0;
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; !feed.Source.IsNone && entry < feed.Model.To.Count; entry++)
            {
                if (context.Demand(feed, entry).Existing is { IsNone: false } existing)
                {
                    used.Add(existing, feed.Width);
                    used.Add(feed.Source, feed.Width);
                }
            }
        }

        foreach (var line in context.Lines)
        {
            foreach (var sink in LineDelivery.Sinks(context, line))
            {
                if (sink.State == EntryState.Served)
                {
                    used.Add(sink.At, line.Width);
                    used.Add(context.Demand(line).Existing, line.Width);
                }
            }
        }
    }

    /// <summary>The points in use, in ascending order.</summary>
    public List<PointIndex> Points => used.ToList();

    /// <summary>True when what a point carries is meant for it, as far as the show says anything: the rules about feeds and lines speak of the rest.</summary>
    public bool IsMeant(PointIndex point, PortKind kind) =>
        kind switch
        {
            PortKind.Output => !hasFeeds || used.Contains(point.Value),
            PortKind.Sink => !hasLines || used.Contains(point.Value),
            _ => false,
        };
}
