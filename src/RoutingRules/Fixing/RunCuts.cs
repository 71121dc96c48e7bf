using RoutingRules.Model;

namespace RoutingRules.Fixing;

/// <summary>Cuts runs of points.</summary>
internal static class RunCuts
{
    /// <summary>The runs of positions that stay, each as first position and width; null when all stay.</summary>
    public static List<(int First, int Width)>? Kept(int width, Predicate<int> drop)
    {
        var kept = new List<(int First, int Width)>();
        for (var position = 0; position < width; position++)
        {
            if (drop(position))
            {
                continue;
            }

            if (kept.Count > 0 && kept[^1].First + kept[^1].Width == position)
            {
                kept[^1] = (kept[^1].First, kept[^1].Width + 1);
            }
            else
            {
                kept.Add((position, 1));
            }
        }

        return kept.Count == 1 && kept[0].Width == width ? null : kept;
    }

    /// <summary>Part of a run.</summary>
    public static PointRange Part(PointRange run, int first, int width) => new(run.Device, run.Group, run.First + first, run.First + first + width - 1);
}
