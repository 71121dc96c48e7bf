using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>A signal graph in which some points are fed otherwise, without being built anew.</summary>
internal sealed class Overlay(SignalGraph graph, Dictionary<int, int> changed)
{
    /// <summary>More hops than any rig has; a walk that is longer runs in a circle.</summary>
    private const int MostHops = 96;

    /// <summary>The points that are fed otherwise, each with what feeds it then; -1 for nothing.</summary>
    public Dictionary<int, int> Changed { get; } = changed;

    /// <summary>How many hops were followed so far.</summary>
    public long Work { get; private set; }

    public int Upstream(int point) => Changed.TryGetValue(point, out var other) ? other : graph.Upstreams[point];

    /// <summary>True when the signal of a source passes on to a point.</summary>
    public bool Passes(PointIndex at, PointIndex source)
    {
        var point = at.Value;
        for (var hops = 0; point >= 0 && hops < MostHops; hops++)
        {
            if (point == source.Value)
            {
                return true;
            }

            point = Upstream(point);
            Work++;
        }

        return false;
    }

    /// <summary>
    /// How much less regular what feeds the changed points becomes: neighbours are regular when neighbours feed them, or nothing feeds either.
    /// </summary>
    public int Irregularity()
    {
        var sum = 0;
        foreach (var point in Changed.Keys)
        {
            if (!Changed.ContainsKey(point - 1))
            {
                sum += Step(point - 1);
            }

            sum += Step(point);
        }

        return sum;
    }

    /// <summary>1 when a point and its follower no longer go together, -1 when they do now, else 0.</summary>
    private int Step(int point)
    {
        if (point < 0 || point + 1 >= graph.PointCount || !SameGroup(point, point + 1))
        {
            return 0;
        }

        return Breaks(Upstream(point), Upstream(point + 1)) - Breaks(graph.Upstreams[point], graph.Upstreams[point + 1]);
    }

    private int Breaks(int first, int second) =>
        first < 0 && second < 0 ? 0
        : first >= 0 && second == first + 1 && SameGroup(first, second) ? 0
        : 1;

    private bool SameGroup(int first, int second)
    {
        var (one, other) = (new PointIndex(first), new PointIndex(second));
        return graph.DeviceOf(one) == graph.DeviceOf(other) && graph.GroupOf(one) == graph.GroupOf(other);
    }
}
