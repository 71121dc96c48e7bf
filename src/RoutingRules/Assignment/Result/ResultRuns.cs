using RoutingRules.Model;

namespace RoutingRules.Assignment.Result;

/// <summary>Cutting and joining runs of points.</summary>
internal static class ResultRuns
{
    /// <summary>What is left of a run, in order, when some of its positions go.</summary>
    public static IEnumerable<PointRange> Without(PointRange run, Func<int, bool> goes)
    {
        for (var start = 0; start < run.Width; )
        {
            var end = start;
            while (end < run.Width && !goes(end))
            {
                end++;
            }

            if (end > start)
            {
                yield return new PointRange(run.Device, run.Group, run.First + start, run.First + end - 1);
            }

            start = end + 1;
        }
    }

    /// <summary>True when a run begins right behind another.</summary>
    public static bool Follows(PointRange run, PointRange next) => run.Device == next.Device && run.Group == next.Group && run.Last + 1 == next.First;

    /// <summary>Two runs as one, the second right behind the first.</summary>
    public static PointRange Joined(PointRange run, PointRange next) => new(run.Device, run.Group, run.First, next.Last);
}
