using FsCheck;
using FsCheck.Xunit;
using RoutingRules.Model;
using RoutingRules.Testing;

namespace RoutingRules.Tests.Promises;

/// <summary>Promise 1 and 4 for the graph: it says of every point what a slow reader of the document says, and nothing is ever summed.</summary>
public sealed class SignalGraphPromises
{
    [Property(MaxTest = Promise.Cases)]
    public Property The_graph_and_a_slow_trace_agree_on_every_point_of_messy_shows() => Promise.Of(ShowArbitraries.Messy(), Disagreement);

    [Property(MaxTest = Promise.Cases)]
    public Property The_graph_and_a_slow_trace_agree_on_every_point_of_valid_shows() => Promise.Of(ShowArbitraries.Valid(), Disagreement);

    [Property(MaxTest = Promise.Cases)]
    public Property Every_point_is_fed_by_one_point_at_most() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var graph = Promise.Resolve(show).Graph;
                var feeders = new int[graph.PointCount];
                for (var point = 0; point < graph.PointCount; point++)
                {
                    foreach (var fed in graph.Fed(new(point)))
                    {
                        feeders[fed]++;
                        if (graph.Upstream(new(fed)).Value != point)
                        {
                            return $"{graph.Address(new(point))} says it feeds {graph.Address(new(fed))}, which disagrees.";
                        }
                    }
                }

                for (var point = 0; point < graph.PointCount; point++)
                {
                    if (feeders[point] != (graph.Upstream(new(point)).IsNone ? 0 : 1))
                    {
                        return $"{graph.Address(new(point))} is fed by {feeders[point]} points.";
                    }
                }

                return null;
            }
        );

    [Property(MaxTest = Promise.Cases)]
    public Property What_a_source_is_said_to_reach_is_what_traces_back_to_it() =>
        Promise.Of(
            ShowArbitraries.Messy(),
            show =>
            {
                var graph = Promise.Resolve(show).Graph;
                var tracer = new NaiveTracer(show);
                var reached = tracer
                    .Points()
                    .Select(point => (Point: point, Source: tracer.Source(point)))
                    .Where(entry => entry.Source is { } source && source != entry.Point)
                    .ToLookup(entry => entry.Source!.Value, entry => entry.Point);
                foreach (var source in reached)
                {
                    var carrying = graph.Carrying(graph.Find(source.Key)).Select(point => graph.Address(point)).ToArray();
                    if (!carrying.SequenceEqual(source))
                    {
                        return $"{source.Key} reaches {string.Join(" ", source)}, the graph says {string.Join(" ", carrying)}.";
                    }
                }

                return null;
            }
        );

    private static string? Disagreement(Show show)
    {
        var graph = Promise.Resolve(show).Graph;
        var tracer = new NaiveTracer(show);
        var points = 0;
        foreach (var point in tracer.Points())
        {
            points++;
            var index = graph.Find(point);
            var (end, passed) = tracer.Trace(point);
            var expected = end == TraceEnd.Source ? passed[^1].ToString() : end.ToString();
            var actual =
                graph.IsLooping(index) ? nameof(TraceEnd.Loop)
                : graph.Origin(index) is { IsNone: false } origin ? graph.Address(origin).ToString()
                : nameof(TraceEnd.Silent);
            if (expected != actual)
            {
                return $"{point}: the graph says {actual}, the document says {expected} by {string.Join(" < ", passed)}.";
            }
        }

        return points == graph.PointCount ? null : $"The graph has {graph.PointCount} points, the document {points}.";
    }
}
