using RoutingRules.Model;

namespace RoutingRules.Resolving;

/// <summary>Which demands of feeds are heard in somebody's ears, whatever the role of the feed says.</summary>
internal static class EarDemands
{
    /// <summary>True for a feed that is in-ear by its role, or of which an entry ends in somebody's ears.</summary>
    public static bool IsInEar(ResolvedShow show, FeedNode feed)
    {
        if (feed.Model.Role == FeedRole.InEar)
        {
            return true;
        }

        for (var entry = 0; show.Ears.All.Count > 0 && entry < feed.Model.To.Count; entry++)
        {
            var demand = show.Demands[feed.FirstDemand + entry];
            if (
                !EndOf(
                    show.Ears,
                    demand,
                    Place(demand, show.Graph, static (graph, at) => graph.Find(at, out var first) == ConnectionState.Connected ? first : PointIndex.None)
                ).IsNone
            )
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Where the entry of a feed is placed, or else pinned; none when it is neither.</summary>
    /// <param name="demand">The entry.</param>
    /// <param name="points">What knows the points.</param>
    /// <param name="find">Asks it for the first point of an address; none when that leads nowhere.</param>
    public static PointIndex Place<TPoints>(DemandNode demand, TPoints points, Func<TPoints, PointRange, PointIndex> find) =>
        !demand.Existing.IsNone ? demand.Existing
        : !demand.IsPinned ? PointIndex.None
        : demand.Allowed.Count > 0 ? demand.Allowed[0]
        : demand.Feed!.Model.To[demand.Entry].At is { } at && at.Width == demand.Width ? find(points, at)
        : PointIndex.None;

    /// <summary>
    /// The first point at which an entry of a feed is heard: where it is placed, or, without a place, bound to be placed. None when there is none.
    /// </summary>
    /// <param name="ends">The points at which somebody hears.</param>
    /// <param name="demand">The entry.</param>
    /// <param name="place">Its <see cref="Place"/>.</param>
    public static PointIndex EndOf(EndPlaces ends, DemandNode demand, PointIndex place)
    {
        if (ends.All.Count == 0)
        {
            return PointIndex.None;
        }

        if (!place.IsNone)
        {
            return FirstEnd(ends, place, demand.Width);
        }

        foreach (var run in demand.Allowed)
        {
            if (FirstEnd(ends, run, demand.Width).IsNone)
            {
                return PointIndex.None;
            }
        }

        return demand.Allowed.Count > 0 ? FirstEnd(ends, demand.Allowed[0], demand.Width) : PointIndex.None;
    }

    /// <summary>True when the signal of a run, or of one of its points, is heard.</summary>
    public static bool IsHeard(EndPlaces ends, PointIndex run, int width)
    {
        for (var position = 0; position < width; position++)
        {
            if (ends.Contains(run + position))
            {
                return true;
            }
        }

        return false;
    }

    private static PointIndex FirstEnd(EndPlaces ends, PointIndex run, int width)
    {
        for (var position = 0; position < width; position++)
        {
            if (ends.Contains(run + position))
            {
                return ends.Behind(run + position)[0];
            }
        }

        return PointIndex.None;
    }
}
