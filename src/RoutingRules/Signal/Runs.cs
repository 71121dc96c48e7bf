using RoutingRules.Model;

namespace RoutingRules.Signal;

/// <summary>Joins points and pairs of points that follow one another, for people to read.</summary>
internal static class Runs
{
    public static PointRange One(Point at) => new(at.Device, at.Group, at.Number, at.Number);

    public static bool Follow(Point first, Point next) => first.Device == next.Device && first.Group == next.Group && first.Number + 1 == next.Number;

    /// <summary>Points as runs, in their order.</summary>
    public static ValueList<PointRange> Of(IEnumerable<Point> points)
    {
        var runs = new List<PointRange>();
        foreach (var point in points)
        {
            if (runs.Count > 0 && Follow(runs[^1][runs[^1].Width - 1], point))
            {
                runs[^1] = new PointRange(point.Device, point.Group, runs[^1].First, point.Number);
            }
            else
            {
                runs.Add(One(point));
            }
        }

        return runs.ToValueList();
    }

    /// <summary>Elements in groups in which each follows the one before.</summary>
    public static List<List<T>> Chains<T>(IEnumerable<T> elements, Func<T, T, bool> follows)
    {
        var chains = new List<List<T>>();
        foreach (var element in elements)
        {
            if (chains.Count > 0 && follows(chains[^1][^1], element))
            {
                chains[^1].Add(element);
            }
            else
            {
                chains.Add([element]);
            }
        }

        return chains;
    }

    /// <summary>For example <c>box-r/out/1-4, 7, 9-10; box-l/out/2</c>.</summary>
    public static string Text(IEnumerable<PointRange> runs) =>
        string.Join(
            "; ",
            Chains(runs, (x, y) => x.Device == y.Device && x.Group == y.Group)
                .Select(chain => $"{chain[0].Device}/{chain[0].Group}/{string.Join(", ", chain.Select(run => run.Numbers))}")
        );
}
