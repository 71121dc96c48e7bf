using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>What feeds, lines and labels say about points; each table is made on the first question.</summary>
internal sealed class Intentions(RuleContext context)
{
    private (int Source, FeedNode Feed)[]? feedsOf;
    private PointSet? labelled;
    private PointSet? named;
    private PointSet? feedPins;
    private PointSet? marked;
    private PointSet? dead;
    private PointSet? ofLines;

    /// <summary>The one that all rules of a run share.</summary>
    public static Intentions Of(RuleContext context) => context.Shared(static asking => new Intentions(asking));

    /// <summary>The source a feed has placed at a point: the first point of the demand is served there now.</summary>
    public bool IsPlaced(PointIndex point, out PointIndex source)
    {
        var demand = context.DemandAt(point);
        source = demand?.Feed is { } feed ? feed.Source + (point.Value - demand.Existing.Value) : PointIndex.None;
        return !source.IsNone;
    }

    /// <summary>The feeds whose source, or half of it, is the point, in document order; empty when there is none.</summary>
    public ReadOnlySpan<(int Source, FeedNode Feed)> FeedsOf(PointIndex source)
    {
        feedsOf ??= Feeds();
        var low = 0;
        var high = feedsOf.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = feedsOf[middle].Source < source.Value ? (middle + 1, high) : (low, middle);
        }

        var end = low;
        while (end < feedsOf.Length && feedsOf[end].Source == source.Value)
        {
            end++;
        }

        return feedsOf.AsSpan(low, end - low);
    }

    /// <summary>True when every entry of a feed is served.</summary>
    public bool IsServed(FeedNode feed)
    {
        for (var entry = 0; entry < feed.Model.To.Count; entry++)
        {
            if (context.Demand(feed, entry).Existing.IsNone)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True for a point with a label.</summary>
    public bool IsLabelled(PointIndex point) => (labelled ??= Labelled()).Contains(point.Value);

    /// <summary>True for a dead or reserved point.</summary>
    public bool IsMarked(PointIndex point) => (marked ??= Marked(false)).Contains(point.Value);

    /// <summary>True for a dead point.</summary>
    public bool IsDead(PointIndex point) => (dead ??= Marked(true)).Contains(point.Value);

    /// <summary>True for a point that a feed's <c>at</c> or a line's <c>to</c> names, or to which a pinned feed traces back.</summary>
    public bool IsNamed(PointIndex point) => (named ??= Named()).Contains(point.Value);

    /// <summary>True for a point at which a pinned feed is decided.</summary>
    public bool IsFeedPin(PointIndex point) => (feedPins ??= FeedPins()).Contains(point.Value);

    /// <summary>True for a point that a line enters at, starts from or shall reach.</summary>
    public bool IsOfLine(PointIndex point) => (ofLines ??= OfLines()).Contains(point.Value);

    /// <summary>True when a cable leads on from an output.</summary>
    public bool IsCabled(PointIndex output)
    {
        foreach (var next in context.Fed(output))
        {
            if (context.Via(new PointIndex(next)) == HopKind.Cable)
            {
                return true;
            }
        }

        return false;
    }

    private (int Source, FeedNode Feed)[] Feeds()
    {
        var table = new List<(int Source, FeedNode Feed)>(2 * context.Feeds.Count);
        foreach (var feed in context.Feeds)
        {
            for (var position = 0; !feed.Source.IsNone && position < feed.Width; position++)
            {
                table.Add((feed.Source.Value + position, feed));
            }
        }

        table.Sort(static (x, y) => x.Source != y.Source ? x.Source.CompareTo(y.Source) : x.Feed.Index.CompareTo(y.Feed.Index));
        return [.. table];
    }

    private PointSet Labelled()
    {
        var table = new PointSet(context.PointCount);
        foreach (var label in context.Labels)
        {
            if (context.Find(label.At, out var first) == ConnectionState.Connected)
            {
                table.Add(first, label.At.Width);
            }
        }

        return table;
    }

    private PointSet Marked(bool onlyDead)
    {
        var table = new PointSet(context.PointCount);
        foreach (var mark in context.Marks)
        {
            if (mark.IsDead || !onlyDead)
            {
                table.Add(mark.First, mark.Width);
            }
        }

        return table;
    }

    private PointSet Named()
    {
        var table = new PointSet(context.PointCount);
        foreach (var demand in context.Demands)
        {
            if (demand is { Feed: { } feed, IsPinned: true })
            {
                var at = feed.Model.To[demand.Entry].At!.Value;
                if (context.Find(at, out var first) == ConnectionState.Connected)
                {
                    table.Add(first, at.Width);
                }

                foreach (var run in demand.Allowed)
                {
                    table.Add(run, demand.Width);
                }
            }
            else if (demand.Line is { } line)
            {
                foreach (var sink in line.Sinks)
                {
                    table.Add(sink, demand.Width);
                }
            }
        }

        return table;
    }

    private PointSet FeedPins()
    {
        var table = new PointSet(context.PointCount);
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; entry < feed.Model.To.Count; entry++)
            {
                var demand = context.Demand(feed, entry);
                if (demand is { IsPinned: true, Allowed.Count: > 0 })
                {
                    table.Add(demand.Allowed[0], demand.Width);
                }
            }
        }

        return table;
    }

    private PointSet OfLines()
    {
        var table = new PointSet(context.PointCount);
        foreach (var line in context.Lines)
        {
            var demand = context.Demand(line);
            table.Add(demand.Existing, line.Width);
            table.Add(line.Source, line.Width);
            foreach (var sink in line.Sinks)
            {
                table.Add(sink, line.Width);
            }

            for (var i = 0; demand.IsPinned && i < demand.Allowed.Count; i++)
            {
                table.Add(demand.Allowed[i], line.Width);
            }
        }

        return table;
    }
}
