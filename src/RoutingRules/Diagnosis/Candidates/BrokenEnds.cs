using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis.Candidates;

/// <summary>Repairs of routes, cables and streams one end of which names what is not there: the end that is sound says which they are.</summary>
internal sealed class BrokenEnds
{
    private readonly CandidateSearch search;
    private readonly SignalGraph graph;

    /// <summary>Everything that is broken mended at once: one name may be wrong in many places.</summary>
    private readonly PatchChange all = new();

    private BrokenEnds(CandidateSearch search)
    {
        this.search = search;
        graph = search.Graph;
    }

    public static void Add(CandidateSearch search)
    {
        var ends = new BrokenEnds(search);
        foreach (var route in search.Show.Routes.Where(route => route.State != ConnectionState.Connected && route.Model.From is not null))
        {
            ends.Mend(
                Hop.Route,
                route.Model.From!.Value,
                route.Model.To,
                (change, from, to) => change.Routes.Replaced[route.Index] = [route.Model with { From = from, To = to }]
            );
        }

        foreach (var cable in search.Show.Cables.Where(cable => cable.State != ConnectionState.Connected))
        {
            ends.Mend(
                Hop.Cable,
                cable.Model.From,
                cable.Model.To,
                (change, from, to) => change.Cables.Replaced[cable.Index] = [cable.Model with { From = from, To = to }]
            );
        }

        foreach (var stream in search.Show.Streams)
        {
            ends.Mend(stream);
        }

        search.Add(RepairKind.Repoint, Hop.Route, 9, ends.all);
    }

    private void Mend(StreamNode stream)
    {
        var model = stream.Model;
        for (var i = 0; i < model.To.Count; i++)
        {
            var receiver = model.To[i];
            var first = receiver.Channels?.First ?? 1;
            var sent = new PointRange(model.From.Device, model.From.Group, model.From.First + first - 1, model.From.First + first + receiver.At.Width - 2);
            var index = i;
            if (stream.State == ConnectionState.Connected && stream.Receivers[i].State != ConnectionState.Connected)
            {
                Mend(
                    Hop.Stream,
                    sent,
                    receiver.At,
                    (change, from, to) =>
                    {
                        if (from == sent)
                        {
                            new StreamEdits(search.Show).Replace(change, stream.Index, index, receiver with { At = to });
                        }
                    }
                );
            }
            else if (stream.State != ConnectionState.Connected)
            {
                Mend(
                    Hop.Stream,
                    sent,
                    receiver.At,
                    (change, from, to) =>
                    {
                        if (to == receiver.At && from.First - first + 1 is var start and >= 1)
                        {
                            change.Streams.Replaced[stream.Index] =
                            [
                                model with
                                {
                                    From = new PointRange(from.Device, from.Group, start, start + model.From.Width - 1),
                                },
                            ];
                        }
                    }
                );
            }
        }
    }

    /// <summary>Takes the end that is not sound from what the steps need at the other one.</summary>
    private void Mend(Hop hop, PointRange from, PointRange to, Action<PatchChange, PointRange, PointRange> write)
    {
        var width = Math.Max(from.Width, to.Width);
        var sinks = graph.Find(to, out var sink) == ConnectionState.Connected;
        var sources = graph.Find(from, out var source) == ConnectionState.Connected;
        foreach (var step in search.Steps.Where(step => step.Hop == hop))
        {
            if (sinks && step.At >= sink && step.At.Value < sink.Value + width && Run(step.Source, step.At.Value - sink.Value, width) is { } start)
            {
                Try(hop, change => write(change, start, Wide(to, width)));
            }

            if (
                sources
                && step.Source >= source
                && step.Source.Value < source.Value + width
                && Run(step.At, step.Source.Value - source.Value, width) is { } end
            )
            {
                Try(hop, change => write(change, Wide(from, width), end));
            }
        }
    }

    private void Try(Hop hop, Action<PatchChange> write)
    {
        var change = new PatchChange();
        write(change);
        change.Routes.Replaced.ToList().ForEach(one => all.Routes.Replaced.TryAdd(one.Key, one.Value));
        change.Cables.Replaced.ToList().ForEach(one => all.Cables.Replaced.TryAdd(one.Key, one.Value));
        search.Add(RepairKind.Repoint, hop, 9, change);
    }

    /// <summary>The run in which a point has a place; null when it does not lie in one group.</summary>
    private PointRange? Run(PointIndex point, int place, int width)
    {
        var first = point + -place;
        return
            first.Value >= 0
            && first.Value + width <= graph.PointCount
            && graph.DeviceOf(first) == graph.DeviceOf(first + (width - 1))
            && graph.GroupOf(first) == graph.GroupOf(first + (width - 1))
            ? graph.Address(first, width)
            : null;
    }

    private static PointRange Wide(PointRange run, int width) =>
        new(run.Device, run.Group, run.First, Math.Min(run.First + width - 1, AddressParser.MaxNumber));
}
