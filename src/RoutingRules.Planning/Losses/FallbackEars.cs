using RoutingRules.Assignment;
using RoutingRules.Checking.Facts;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>Keeps plans from bringing into somebody's ears what is not meant for them or has no limiter.</summary>
internal sealed class FallbackEars(ResolvedShow show)
{
    /// <summary>The runs that are not offered to a demand: those that end in ears in which it was not, unless it may be heard there and is limited.</summary>
    public List<Placement> Forbidden(DemandNode demand)
    {
        if (demand.Feed is not { } feed || show.Ears.All.Count == 0 || IsSafe(feed))
        {
            return [];
        }

        var known = Ends(demand.Existing, demand.Width);
        return
        [
            .. Runs(demand)
                .Where(run => Ends(run, demand.Width).Except(known).Any())
                .Select(run => new Placement { Demand = demand.Key, At = show.Graph.Address(run, demand.Width) }),
        ];
    }

    /// <summary>Why those runs are not offered.</summary>
    public static string Reason(FeedNode feed) =>
        FeedRoles.MayBeForEars(feed.Model.Role)
            ? "What goes into somebody's ears is not offered to it, as no limiter is declared."
            : "What goes into somebody's ears is not offered to it, as it is not meant for them.";

    /// <summary>
    /// What gets into somebody's ears after the steps of a plan and was not there, unless it may be heard there and is limited; null when nothing does.
    /// </summary>
    public string? Unsafe(ResolvedShow done)
    {
        foreach (var end in done.Ears.All)
        {
            foreach (var source in Sources(done, end).Except(Sources(show, end)))
            {
                var feeds = show
                    .Feeds.Where(feed => !feed.Source.IsNone && source.Value >= feed.Source.Value && source.Value < feed.Source.Value + feed.Width)
                    .ToList();
                if (!feeds.Exists(IsSafe))
                {
                    return $"'{feeds.FirstOrDefault()?.DisplayName ?? show.Graph.Address(source).ToString()}'";
                }
            }
        }

        return null;
    }

    private static bool IsSafe(FeedNode feed) => feed.Model.Limiter == true && FeedRoles.MayBeForEars(feed.Model.Role);

    /// <summary>The runs a demand may take, and those without a cable, to which one could be plugged.</summary>
    private IEnumerable<PointIndex> Runs(DemandNode demand) =>
        demand
            .Allowed.Concat(
                from device in show.Devices
                from @group in (IEnumerable<GroupNode>)device.Groups
                where @group.IsLineOutput
                from i in Enumerable.Range(0, Math.Max(0, @group.Count - demand.Width + 1))
                let run = device.First(@group) + i
                where Enumerable.Range(0, demand.Width).All(position => !FallbackWriter.IsCabled(show.Graph, run + position))
                select run
            )
            .Distinct();

    private HashSet<PointIndex> Ends(PointIndex run, int width)
    {
        var ends = new HashSet<PointIndex>();
        for (var position = 0; !run.IsNone && position < width; position++)
        {
            ends.UnionWith(show.Ears.Behind(run + position));
        }

        return ends;
    }

    /// <summary>The real sources of a point, through either leg of a selector.</summary>
    private static HashSet<PointIndex> Sources(ResolvedShow show, PointIndex end)
    {
        var sources = new HashSet<PointIndex>();
        var passed = new HashSet<PointIndex>();
        var pending = new Stack<PointIndex>([end]);
        while (pending.TryPop(out var point))
        {
            if (!passed.Add(point))
            {
                continue;
            }

            var before = EndPlaces.Before(show.Graph, point);
            if (before.Count == 0 && show.Graph.Origin(point) == point && point != end)
            {
                sources.Add(point);
            }

            foreach (var next in before)
            {
                pending.Push(next);
            }
        }

        return sources;
    }
}
