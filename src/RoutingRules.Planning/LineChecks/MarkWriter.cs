using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Planning.LineChecks;

/// <summary>Writes and takes away what a show says about single connectors: that they do not work, or are kept for somebody else.</summary>
internal static class MarkWriter
{
    /// <summary>Marks connectors as not working; those that are marked already keep what is said of them.</summary>
    public static void Kill(ShowRewriting show, LineCheckResult result)
    {
        foreach (var part in Unmarked(result.At, show.Show.Rig.Unavailable.Select(entry => entry.At)))
        {
            var entry = new UnavailablePoints
            {
                At = part,
                Reason = result.Reason,
                Since = result.Since,
            };
            show.Add(ShowLists.Unavailable, show.Show.Rig.Unavailable, entry);
        }
    }

    /// <summary>Keeps connectors for somebody else; those that are kept already keep what is said of them.</summary>
    public static void Reserve(ShowRewriting show, LineCheckResult result)
    {
        foreach (var part in Unmarked(result.At, show.Show.Rig.Reserved.Select(entry => entry.At)))
        {
            show.Add(ShowLists.Reserved, show.Show.Rig.Reserved, new ReservedPoints { At = part, Reason = result.Reason });
        }
    }

    /// <summary>Takes the mark away that connectors do not work.</summary>
    public static void Revive(ShowRewriting show, LineCheckResult result) =>
        show.Each(
            ShowLists.Unavailable,
            show.Show.Rig.Unavailable,
            entry =>
                RunCuts.Kept(entry.At.Width, position => Holds(result.At, entry.At[position])) is { } kept
                    ? kept.ConvertAll(part => entry with { At = RunCuts.Part(entry.At, part.First, part.Width) })
                    : [entry]
        );

    private static List<PointRange> Unmarked(PointRange run, IEnumerable<PointRange> marks)
    {
        var marked = marks.ToList();
        return RunCuts.Kept(run.Width, position => marked.Exists(mark => Holds(mark, run[position]))) is { } kept
            ? kept.ConvertAll(part => RunCuts.Part(run, part.First, part.Width))
            : [run];
    }

    public static bool Holds(PointRange run, Point point) =>
        run.Device == point.Device && run.Group == point.Group && run.First <= point.Number && point.Number <= run.Last;
}
