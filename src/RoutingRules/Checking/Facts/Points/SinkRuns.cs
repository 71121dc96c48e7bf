using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Points;

/// <summary>Collects faulty points and joins neighbours with the same fault, so that a displaced run is one finding and not eight.</summary>
/// <remarks>The result does not depend on the order of adding.</remarks>
internal sealed class SinkRuns
{
    private readonly List<SinkRun> points = [];

    public bool IsEmpty => points.Count == 0;

    public void Add(PointIndex sink, PointIndex source, int tag, int order) => points.Add(new SinkRun(sink, source, 1, tag, order));

    /// <summary>The runs, by tag, then distance between sink and source, then sink.</summary>
    public List<SinkRun> Merge(RuleContext context)
    {
        points.Sort(Compare);
        var runs = new List<SinkRun>();
        foreach (var point in points)
        {
            if (runs.Count > 0 && Joined(context, runs[^1], point) is { } joined)
            {
                runs[^1] = joined;
            }
            else
            {
                runs.Add(point);
            }
        }

        return runs;
    }

    private static SinkRun? Joined(RuleContext context, SinkRun run, SinkRun point)
    {
        var step = point.Sink.Value - run.Sink.Value;
        if (run.Tag != point.Tag || Offset(run) != Offset(point) || step > run.Width)
        {
            return null;
        }

        if (
            step == run.Width
            && !(
                AreNeighbours(context, run.Sink + (step - 1), point.Sink)
                && (run.Source.IsNone || AreNeighbours(context, run.Source + (step - 1), point.Source))
            )
        )
        {
            return null;
        }

        return run with
        {
            Width = Math.Max(run.Width, step + 1),
            Order = Math.Min(run.Order, point.Order),
        };
    }

    private static bool AreNeighbours(RuleContext context, PointIndex point, PointIndex next) =>
        context.DeviceOf(point) == context.DeviceOf(next) && context.GroupOf(point) == context.GroupOf(next);

    private static long Offset(SinkRun run) => run.Source.IsNone ? long.MinValue : (long)run.Source.Value - run.Sink.Value;

    private static int Compare(SinkRun x, SinkRun y)
    {
        var order = x.Tag.CompareTo(y.Tag);
        order = order != 0 ? order : Offset(x).CompareTo(Offset(y));
        order = order != 0 ? order : x.Sink.CompareTo(y.Sink);
        return order != 0 ? order : x.Order.CompareTo(y.Order);
    }
}
