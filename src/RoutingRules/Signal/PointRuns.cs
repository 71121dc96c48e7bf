using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Signal;

/// <summary>Joins points that follow one another.</summary>
internal static class PointRuns
{
    /// <summary>The points as runs, in point order.</summary>
    public static ValueList<PointRange> Of(SignalGraph graph, IEnumerable<int> points)
    {
        var runs = new List<PointRange>();
        foreach (var point in points.Distinct().Order())
        {
            var address = graph.Address(new PointIndex(point), 1);
            if (runs.Count > 0 && runs[^1] is var last && last.Device == address.Device && last.Group == address.Group && last.Last + 1 == address.First)
            {
                runs[^1] = new PointRange(last.Device, last.Group, last.First, address.First);
            }
            else
            {
                runs.Add(address);
            }
        }

        return runs.ToValueList();
    }
}
