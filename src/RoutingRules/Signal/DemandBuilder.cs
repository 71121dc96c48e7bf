using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Signal;

/// <summary>Makes demands of feeds and lines.</summary>
internal sealed class DemandBuilder
{
    private readonly Show show;
    private readonly SignalGraph graph;
    private readonly PossiblePlaces places;

    public DemandBuilder(Show show, DeviceNode[] devices, SignalGraph graph, CableNode[] cables)
    {
        this.show = show;
        this.graph = graph;
        places = new PossiblePlaces(devices, graph, cables);
    }

    public (FeedNode[] Feeds, LineNode[] Lines, DemandNode[] Demands) Build()
    {
        var feeds = new FeedNode[show.Feeds.Count];
        var lines = new LineNode[show.Lines.Count];
        var count = lines.Length;
        foreach (var feed in show.Feeds)
        {
            count += feed.To.Count;
        }

        var demands = new List<DemandNode>(count);
        for (var i = 0; i < feeds.Length; i++)
        {
            var feed = show.Feeds[i];
            var state = graph.Find(feed.Source, out var source);
            var node = new FeedNode
            {
                Model = feed,
                Index = i,
                Source = source,
                SourceState = state,
                FirstDemand = demands.Count,
            };
            feeds[i] = node;
            for (var entry = 0; entry < feed.To.Count; entry++)
            {
                demands.Add(
                    new DemandNode
                    {
                        Key = string.Create(CultureInfo.InvariantCulture, $"{feed.Id}/{entry + 1}"),
                        Index = demands.Count,
                        Feed = node,
                        Entry = entry,
                        Width = feed.Source.Width,
                        IsPinned = feed.To[entry].At is not null,
                        Allowed = places.Outputs(feed.To[entry], feed.Source.Width, 1),
                        EvenRuns = feed.Source.Width == 1 || feed.To[entry].At is not null ? [] : places.Outputs(feed.To[entry], feed.Source.Width, 0),
                    }
                );
            }
        }

        for (var i = 0; i < lines.Length; i++)
        {
            var line = show.Lines[i];
            var sinks = new PointIndex[line.To.Count];
            for (var entry = 0; entry < sinks.Length; entry++)
            {
                graph.Find(line.To[entry], out sinks[entry]);
                sinks[entry] = line.To[entry].Width == line.Width ? sinks[entry] : PointIndex.None;
            }

            var source = PointIndex.None;
            if (line.From.Source is { } born && born.Width == line.Width)
            {
                graph.Find(born, out source);
            }

            var node = new LineNode
            {
                Model = line,
                Index = i,
                Sinks = ValueList.Adopt(sinks),
                Source = source,
                Demand = demands.Count,
            };
            lines[i] = node;
            demands.Add(
                new DemandNode
                {
                    Key = line.Id.Value,
                    Index = demands.Count,
                    Line = node,
                    Entry = 0,
                    Width = line.Width,
                    IsPinned = !line.From.At.IsEmpty || line.From.Source is not null,
                    Allowed = places.Inputs(line, source, 1),
                    EvenRuns = line.Width == 1 || !line.From.At.IsEmpty || line.From.Source is not null ? [] : places.Inputs(line, source, 0),
                }
            );
        }

        return (feeds, lines, [.. demands]);
    }
}
