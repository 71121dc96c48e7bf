using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>The labels point by point; of several at one point the first counts.</summary>
internal sealed class LabelTable
{
    private readonly Dictionary<int, LabelledPoint> byPoint = [];

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
                var point = new LabelledPoint(first + position, label.Text, i);
                if (byPoint.TryAdd(point.Point.Value, point))
                {
                    Points.Add(point);
                }
            }
        }

        Points.Sort(static (x, y) => x.Point.CompareTo(y.Point));
    }

    /// <summary>The labelled points, in ascending order.</summary>
    public List<LabelledPoint> Points { get; } = [];

    /// <summary>The label of a point, or null.</summary>
    public LabelledPoint? At(PointIndex point) => byPoint.TryGetValue(point.Value, out var label) ? label : null;

    /// <summary>The labelled points of each port group that has any, in ascending order.</summary>
    public IEnumerable<List<LabelledPoint>> Groups(RuleContext context)
    {
        for (var start = 0; start < Points.Count;)
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
