using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Resolving;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>The walk down from a point comes to what traces back to it, each point once.</summary>
public sealed class WalkPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property The_walk_down_comes_to_what_traces_back_and_to_nothing_twice() =>
        Promise.Of(ShowArbitraries.Messy(), show => Difference(Promise.Resolve(show).Graph));

    [Property(MaxTest = Promise.Cases)]
    public Property The_walk_down_ends_in_rings() => Promise.Of(ShowArbitraries.Messy(), show => Difference(Promise.Resolve(Rings.Close(show, 1)).Graph));

    private static string? Difference(SignalGraph graph)
    {
        var behind = new List<int>[graph.PointCount];
        for (var point = 0; point < behind.Length; point++)
        {
            behind[point] = [];
        }

        for (var point = 0; point < behind.Length; point++)
        {
            var passed = new HashSet<int>();
            for (var at = point; at >= 0 && passed.Add(at); at = graph.Upstream(new PointIndex(at)).Value)
            {
                behind[at].Add(point);
            }
        }

        for (var point = 0; point < behind.Length; point++)
        {
            var reached = new List<int>();
            foreach (var next in graph.Downward(new PointIndex(point)))
            {
                reached.Add(next.Value);
            }

            reached.Sort();
            if (!reached.SequenceEqual(behind[point]))
            {
                return $"{graph.Address(new PointIndex(point))} feeds {behind[point].Count} points, the walk came to {reached.Count}.";
            }
        }

        return null;
    }
}
