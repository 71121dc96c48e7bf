using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>
/// Lets lines that two acts share stay at their inputs although they go to other channels: a patch says what is plugged where only by what its channels
/// carry.
/// </summary>
internal static class StayingLines
{
    /// <summary>The show with a patch in which shared lines arrive where they go now, and no other line seems to be at their inputs.</summary>
    /// <param name="before">The act before, resolved.</param>
    /// <param name="show">The act, with the patch of the act before.</param>
    public static Show Keep(ResolvedShow before, Show show)
    {
        var graph = before.Graph;
        var old = before.Lines.Where(line => !before.Demands[line.Demand].Existing.IsNone).ToDictionary(line => line.Model.Id, line => line);
        var kept = new HashSet<int>();
        var sources = new Dictionary<Point, Point?>();
        foreach (var line in show.Lines)
        {
            if (old.TryGetValue(line.Id, out var was) && was.Width == line.Width && !before.Demands[was.Demand].Existing.IsNone)
            {
                kept.UnionWith(Enumerable.Range(before.Demands[was.Demand].Existing.Value, line.Width));
                Follow(graph, was, line, sources);
            }
        }

        foreach (var line in show.Lines.Where(line => !old.ContainsKey(line.Id)))
        {
            foreach (var sink in line.To.SelectMany(to => Enumerable.Range(0, to.Width).Select(i => to[i])))
            {
                if (graph.Find(sink) is { IsNone: false } index && kept.Contains(graph.Origin(index).Value) && graph.FixedSource(index) is null)
                {
                    sources.TryAdd(sink, null);
                }
            }
        }

        return sources.Aggregate(
            sources.Count == 0 ? show : RouteMap.Spread(show),
            static (state, entry) => RouteMap.With(state, entry.Key, true, entry.Value)
        );
    }

    /// <summary>A channel of the same console takes what the old channel took.</summary>
    private static void Follow(SignalGraph graph, LineNode was, Line line, Dictionary<Point, Point?> sources)
    {
        foreach (var to in line.To.Where(to => !was.Model.To.Contains(to)))
        {
            var from = was.Model.To.FirstOrDefault(other => other.Device == to.Device && other.Group == to.Group && other.Width == to.Width);
            for (var i = 0; from.Width > 0 && i < to.Width; i++)
            {
                var sink = graph.Find(to[i]);
                var taken = graph.Find(from[i]) is { IsNone: false } index ? graph.Upstream(index) : PointIndex.None;
                if (!sink.IsNone && !taken.IsNone && graph.GroupOf(sink).Kind == PortKind.Sink && graph.FixedSource(sink) is null)
                {
                    sources[to[i]] = graph.Address(taken);
                }
            }
        }
    }
}
