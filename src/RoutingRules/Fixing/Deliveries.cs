using RoutingRules.Resolving;

namespace RoutingRules.Fixing;

/// <summary>What arrives where the feeds and lines of a show want it.</summary>
internal static class Deliveries
{
    /// <summary>
    /// What arrives in one show and no longer in another that still wants it, in words; null when nothing is lost. A wish is known by the feed or line and
    /// by the destination as written, so that one which an edit takes out or corrects is not missed.
    /// </summary>
    public static string? Lost(ResolvedShow before, ResolvedShow after)
    {
        var wanted = new Dictionary<(bool IsLine, string Id, object To), bool>();
        foreach (var (wish, _, arrives) in Of(after))
        {
            wanted[wish] = arrives || wanted.GetValueOrDefault(wish);
        }

        foreach (var (wish, name, arrives) in Of(before))
        {
            if (arrives && wanted.TryGetValue(wish, out var still) && !still)
            {
                return name;
            }
        }

        return null;
    }

    private static IEnumerable<((bool IsLine, string Id, object To) Wish, string Name, bool Arrives)> Of(ResolvedShow show)
    {
        foreach (var demand in show.Demands)
        {
            if (demand.Feed is { } feed)
            {
                yield return ((false, feed.Model.Id.Value, feed.Model.To[demand.Entry]), $"'{demand.DisplayName}'", !demand.Existing.IsNone);
            }
            else if (demand.Line is { } line)
            {
                for (var sink = 0; sink < line.Sinks.Count; sink++)
                {
                    var to = line.Model.To[sink];
                    yield return ((true, line.Model.Id.Value, to), $"'{demand.DisplayName}' at {to}", Arrives(show.Graph, demand, line.Sinks[sink]));
                }
            }
        }
    }

    private static bool Arrives(SignalGraph graph, DemandNode demand, PointIndex sink)
    {
        var arrives = !sink.IsNone && !demand.Existing.IsNone;
        for (var position = 0; arrives && position < demand.Width; position++)
        {
            arrives = Passes(graph, demand.Existing + position, sink + position);
        }

        return arrives;
    }

    private static bool Passes(SignalGraph graph, PointIndex source, PointIndex sink)
    {
        foreach (var point in graph.Upward(sink))
        {
            if (point == source)
            {
                return true;
            }
        }

        return false;
    }
}
