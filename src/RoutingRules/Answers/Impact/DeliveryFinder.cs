using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Answers;

/// <summary>Finds at which places feeds and lines arrive.</summary>
internal static class DeliveryFinder
{
    public static void Find(FailureModel model, ResolvedShow show, List<Delivery> deliveries, List<LossSubject> subjects, List<string> notArriving)
    {
        var feeds = new Dictionary<Id<Feed>, int>();
        foreach (var feed in show.Feeds)
        {
            feeds.TryAdd(feed.Model.Id, subjects.Count);
            subjects.Add(new LossSubject { Feed = feed, Index = subjects.Count });
        }

        foreach (var subject in subjects)
        {
            if (subject.Feed!.Model.BackupOf is { } backed && feeds.TryGetValue(backed, out var of) && of != subject.Index)
            {
                subjects[of].Backups.Add(subject.Index);
            }
        }

        foreach (var line in show.Lines)
        {
            subjects.Add(new LossSubject { Line = line, Index = subjects.Count });
        }

        foreach (var demand in show.Demands)
        {
            var subject = subjects[demand.Feed?.Index ?? show.Feeds.Count + demand.Line!.Index];
            var before = deliveries.Count;
            var isWhole = demand.Feed is null ? AddLine(model, show, demand, deliveries) : AddFeed(model, show, demand, deliveries);
            for (var i = before; i < deliveries.Count; i++)
            {
                subject.Deliveries.Add(i);
            }

            if (!isWhole)
            {
                notArriving.Add(demand.Key);
            }
        }
    }

    /// <summary>The point that plays what a point carries, as far as each feeds one other.</summary>
    public static int Player(SignalGraph graph, int point)
    {
        var steps = 0;
        for (var fed = graph.Fed(new PointIndex(point)); fed.Length == 1 && steps++ < graph.PointCount; fed = graph.Fed(new PointIndex(point)))
        {
            point = fed[0];
        }

        return point;
    }

    private static bool AddFeed(FailureModel model, ResolvedShow show, DemandNode demand, List<Delivery> deliveries)
    {
        if (demand.Existing.IsNone)
        {
            return false;
        }

        var at = demand.Existing;
        if (demand.Feed!.Model.To[demand.Entry].At is { } pinned && show.Graph.Find(pinned, out var first) == ConnectionState.Connected)
        {
            at = first;
        }

        var ends = new int[demand.Width];
        for (var position = 0; position < demand.Width; position++)
        {
            ends[position] = Player(show.Graph, at.Value + position);
            if (model.IsSilent(ends[position]))
            {
                return false;
            }
        }

        deliveries.Add(new Delivery { Demand = demand, Run = demand.Existing, At = show.Graph.Address(at, demand.Width), Ends = ends });
        return true;
    }

    private static bool AddLine(FailureModel model, ResolvedShow show, DemandNode demand, List<Delivery> deliveries)
    {
        var isWhole = !demand.Existing.IsNone;
        for (var i = 0; !demand.Existing.IsNone && i < demand.Line!.Sinks.Count; i++)
        {
            var sink = demand.Line.Sinks[i];
            var run = sink.IsNone ? PointIndex.None : RunOf(show.Graph, demand, sink);
            var ends = Enumerable.Range(sink.Value, demand.Width).ToArray();
            if (run.IsNone || ends.Any(model.IsSilent))
            {
                isWhole = false;
                continue;
            }

            deliveries.Add(new Delivery { Demand = demand, Sink = i, Run = run, At = show.Graph.Address(sink, demand.Width), Ends = ends });
        }

        return isWhole;
    }

    /// <summary>The run of a line that a sink traces to; of a split line any of its points.</summary>
    private static PointIndex RunOf(SignalGraph graph, DemandNode demand, PointIndex sink)
    {
        if (demand.Line!.Model.From.At.IsEmpty)
        {
            return ExistingPlacements.Carries(graph, sink, demand.Existing, demand.Width) ? demand.Existing : PointIndex.None;
        }

        foreach (var run in demand.Allowed)
        {
            if (ExistingPlacements.Carries(graph, sink, run, demand.Width))
            {
                return run;
            }
        }

        return PointIndex.None;
    }
}
