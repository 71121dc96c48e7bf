using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Labels;

/// <summary>The labels point by point; of several at one point the first counts.</summary>
internal sealed class LabelTable
{
    public LabelTable(RuleContext context)
    {
        for (var i = 0; i < context.Labels.Count; i++)
        {
            var label = context.Labels[i];
            if (context.Find(label.At, out var first) != ConnectionState.Connected)
            {
                continue;
            }

            for (var position = 0; position < label.At.Width; position++)
            {
                Points.Add(new LabelledPoint(first + position, label.Text, i));
            }
        }

        Points.Sort(static (x, y) => x.Point != y.Point ? x.Point.CompareTo(y.Point) : x.Index.CompareTo(y.Index));
        var kept = 0;
        for (var i = 0; i < Points.Count; i++)
        {
            if (i == 0 || Points[i].Point != Points[i - 1].Point)
            {
                Points[kept++] = Points[i];
            }
        }

        Points.RemoveRange(kept, Points.Count - kept);
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static LabelTable Of(RuleContext context) => context.Shared(static asking => new LabelTable(asking));

    /// <summary>The labelled points, in ascending order.</summary>
    public List<LabelledPoint> Points { get; } = [];

    /// <summary>The label of a point, or null.</summary>
    public LabelledPoint? At(PointIndex point)
    {
        var low = 0;
        var high = Points.Count;
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            (low, high) = Points[middle].Point < point ? (middle + 1, high) : (low, middle);
        }

        return low < Points.Count && Points[low].Point == point ? Points[low] : null;
    }

    /// <summary>The labelled points of each port group that has any, in ascending order.</summary>
    public IEnumerable<List<LabelledPoint>> Groups(RuleContext context)
    {
        for (var start = 0; start < Points.Count; )
        {
            var device = context.DeviceOf(Points[start].Point);
            var group = context.GroupOf(Points[start].Point);
            var beyond = device.First(group) + group.Count;
            var end = start + 1;
            while (end < Points.Count && Points[end].Point < beyond)
            {
                end++;
            }

            yield return Points[start..end];
            start = end;
        }
    }
}
