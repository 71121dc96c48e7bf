using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>
/// Finds pinned feeds, or lines from pinned inputs, that all arrive the same number of points beside their places. One slip of the hand makes such
/// a run, so one rule reports it and the rules about single feeds and lines leave its members out.
/// </summary>
internal sealed class Displacements
{
    /// <summary>Fewer points than this may stand beside their places for reasons of their own.</summary>
    public const int LeastRun = 3;

    private readonly RuleContext context;
    private readonly HashSet<int> members = [];

    private Displacements(RuleContext context, List<(PointIndex Wanted, PointIndex Source, DemandNode Demand)> wants)
    {
        this.context = context;
        Find(wants);
    }

    /// <summary>The runs, those nearest to their places first, then by point.</summary>
    public List<DisplacedRun> Runs { get; } = [];

    private sealed record Feeds(Displacements Found);

    private sealed record Lines(Displacements Found);

    /// <summary>Runs of feeds.</summary>
    public static Displacements OfFeeds(RuleContext context) => context.Shared(static asking => new Feeds(FindFeeds(asking))).Found;

    /// <summary>Runs of lines at their channels.</summary>
    public static Displacements OfLines(RuleContext context) => context.Shared(static asking => new Lines(FindLines(asking))).Found;

    private static Displacements FindFeeds(RuleContext context)
    {
        var wants = new List<(PointIndex Wanted, PointIndex Source, DemandNode Demand)>();
        foreach (var feed in context.Feeds)
        {
            for (var entry = 0; !feed.Source.IsNone && entry < feed.Model.To.Count; entry++)
            {
                var demand = context.Demand(feed, entry);
                for (var position = 0; demand is { IsPinned: true, Existing.IsNone: true, Allowed.Count: 1 } && position < demand.Width; position++)
                {
                    wants.Add((demand.Allowed[0] + position, feed.Source + position, demand));
                }
            }
        }

        return new Displacements(context, wants);
    }

    private static Displacements FindLines(RuleContext context)
    {
        var wants = new List<(PointIndex Wanted, PointIndex Source, DemandNode Demand)>();
        foreach (var line in context.Lines)
        {
            var demand = context.Demand(line);
            foreach (var sink in line.Sinks)
            {
                for (var position = 0; !sink.IsNone && demand is { IsPinned: true, Allowed.Count: 1 } && position < line.Width; position++)
                {
                    if (!context.IsFedBy(sink + position, demand.Allowed[0] + position))
                    {
                        wants.Add((sink + position, demand.Allowed[0] + position, demand));
                    }
                }
            }
        }

        return new Displacements(context, wants);
    }

    /// <summary>True when a run holds the point as one where something belongs.</summary>
    public bool IsMember(PointIndex wanted) => members.Contains(wanted.Value);

    private void Find(List<(PointIndex Wanted, PointIndex Source, DemandNode Demand)> wants)
    {
        if (wants.Count < LeastRun)
        {
            return;
        }

        var found = new List<(int Shift, PointIndex Wanted, DemandNode Demand)>();
        foreach (var (wanted, source, demand) in wants)
        {
            if (context.IsLooping(source))
            {
                continue;
            }

            foreach (var point in FeedPlaces.Reached(context, source))
            {
                if (
                    point != wanted
                    && context.DeviceOf(point) == context.DeviceOf(wanted)
                    && context.GroupOf(point) == context.GroupOf(wanted)
                    && context.DemandAt(point) is null
                    && !IsOwnSink(demand, point)
                )
                {
                    found.Add((point.Value - wanted.Value, wanted, demand));
                }
            }
        }

        found.Sort(
            static (x, y) =>
            {
                var order = Math.Abs(x.Shift).CompareTo(Math.Abs(y.Shift));
                order = order != 0 ? order : x.Shift.CompareTo(y.Shift);
                order = order != 0 ? order : x.Wanted.CompareTo(y.Wanted);
                return order != 0 ? order : string.CompareOrdinal(x.Demand.Key, y.Demand.Key);
            }
        );
        Join(found);
    }

    private void Join(List<(int Shift, PointIndex Wanted, DemandNode Demand)> found)
    {
        for (var start = 0; start < found.Count; )
        {
            var demands = new List<DemandNode> { found[start].Demand };
            var end = start + 1;
            for (; end < found.Count && Follows(found[end - 1], found[end]); end++)
            {
                if (!demands.Contains(found[end].Demand))
                {
                    demands.Add(found[end].Demand);
                }
            }

            var width = found[end - 1].Wanted.Value - found[start].Wanted.Value + 1;
            if (width >= LeastRun && demands.Count > 1 && !members.Contains(found[start].Wanted.Value) && !members.Contains(found[end - 1].Wanted.Value))
            {
                Runs.Add(
                    new DisplacedRun
                    {
                        Wanted = found[start].Wanted,
                        Width = width,
                        Shift = found[start].Shift,
                        Demands = demands,
                    }
                );
                for (var position = 0; position < width; position++)
                {
                    members.Add(found[start].Wanted.Value + position);
                }
            }

            start = end;
        }
    }

    private bool Follows((int Shift, PointIndex Wanted, DemandNode Demand) last, (int Shift, PointIndex Wanted, DemandNode Demand) next) =>
        next.Shift == last.Shift
        && next.Wanted.Value - last.Wanted.Value <= 1
        && context.DeviceOf(next.Wanted) == context.DeviceOf(last.Wanted)
        && context.GroupOf(next.Wanted) == context.GroupOf(last.Wanted);

    private static bool IsOwnSink(DemandNode demand, PointIndex point)
    {
        for (var i = 0; demand.Line is { } line && i < line.Sinks.Count; i++)
        {
            if (!line.Sinks[i].IsNone && point >= line.Sinks[i] && point.Value < line.Sinks[i].Value + line.Width)
            {
                return true;
            }
        }

        return false;
    }
}
