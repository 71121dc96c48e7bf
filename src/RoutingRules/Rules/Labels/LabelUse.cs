using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>The points that feeds and lines use as the patch stands, and what they mean there.</summary>
internal sealed class LabelUse
{
    private readonly HashSet<int> used = [];
    private readonly bool hasFeeds;
    private readonly bool hasLines;

    public LabelUse(RuleContext context)
    {
        hasFeeds = context.Feeds.Count > 0;
        hasLines = context.Lines.Count > 0;
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; !feed.Source.IsNone && entry < feed.Model.To.Count; entry++)
            {
                if (context.Demand(feed, entry).Existing is { IsNone: false } existing)
                {
                    Add(used, existing, feed.Width);
                    Add(used, feed.Source, feed.Width);
                }
            }
        }

        foreach (var line in context.Lines)
        {
            foreach (var sink in LineDelivery.Sinks(context, line))
            {
                if (sink.State == EntryState.Served)
                {
                    Add(used, sink.At, line.Width);
                    Add(used, context.Demand(line).Existing, line.Width);
                }
            }
        }
    }

    /// <summary>The points in use, in ascending order.</summary>
    public List<PointIndex> Points
    {
        get
        {
            var points = new List<PointIndex>(used.Count);
            foreach (var point in used)
            {
                points.Add(new PointIndex(point));
            }

            points.Sort();
            return points;
        }
    }

    /// <summary>True when what a point carries is meant for it, as far as the show says anything: the rules about feeds and lines speak of the rest.</summary>
    public bool IsMeant(PointIndex point, PortKind kind) => kind switch
    {
        PortKind.Output => !hasFeeds || used.Contains(point.Value),
        PortKind.Sink => !hasLines || used.Contains(point.Value),
        _ => false,
    };

    private static void Add(HashSet<int> table, PointIndex first, int width)
    {
        for (var position = 0; !first.IsNone && position < width; position++)
        {
            table.Add(first.Value + position);
        }
    }
}
