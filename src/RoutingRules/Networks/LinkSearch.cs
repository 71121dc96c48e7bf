using RoutingRules.Resolving;

namespace RoutingRules.Networks;

/// <summary>Searches over the switches and links that are left of a network, fewest hops first.</summary>
/// <remarks>
/// Of equally short ways it takes the one whose links come first from switch to switch; the paths of streams, whose ties go by the links of a whole hop, are
/// those of <see cref="NetworkMap"/>.
/// </remarks>
internal sealed class LinkSearch(NetworkMap map)
{
    private readonly int[] queue = new int[map.SwitchCount];
    private readonly int[] cameBy = new int[map.SwitchCount];
    private readonly int[] reachedIn = new int[map.SwitchCount];
    private int searches;

    /// <summary>The first switch reached that is an end; -1 for none.</summary>
    /// <param name="starts">The switches to start at.</param>
    /// <param name="isEnd">True for a switch to end at.</param>
    /// <param name="passes">True when a link may be passed to the switch at its other end; asked for every link at every switch reached.</param>
    public int Find(ReadOnlySpan<int> starts, Func<int, bool> isEnd, Func<int, int, bool> passes)
    {
        searches++;
        var count = 0;
        foreach (var start in starts)
        {
            Reach(start, NetworkMap.Root, ref count);
        }

        for (var done = 0; done < count; done++)
        {
            var at = queue[done];
            if (isEnd(at))
            {
                return at;
            }

            foreach (var link in map.LinksAt(at))
            {
                var other = map.Other(link, at);
                if (passes(link, other))
                {
                    Reach(other, link, ref count);
                }
            }
        }

        return -1;
    }

    /// <summary>The links by which the last search came to a switch, back to where it started.</summary>
    public List<int> Back(int end)
    {
        var way = new List<int>();
        for (var at = end; cameBy[at] >= 0; at = map.Other(cameBy[at], at))
        {
            way.Add(cameBy[at]);
        }

        return way;
    }

    private void Reach(int at, int by, ref int count)
    {
        if (reachedIn[at] != searches)
        {
            reachedIn[at] = searches;
            cameBy[at] = by;
            queue[count++] = at;
        }
    }
}
