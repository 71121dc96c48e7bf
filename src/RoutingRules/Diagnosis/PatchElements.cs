using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>The routes, receivers and cables of a show by the points they claim and feed.</summary>
internal sealed class PatchElements
{
    private static readonly List<Element> Nothing = [];

    private readonly SignalGraph graph;
    private readonly Dictionary<int, List<Element>> claims = [];
    private readonly Dictionary<int, List<Element>> feeds = [];
    private readonly Dictionary<(Hop Hop, int Index), List<Element>> byIndex = [];

    public PatchElements(ResolvedShow show)
    {
        graph = show.Graph;
        var patch = show.Document.Patch;
        for (var i = 0; i < patch.Routes.Count; i++)
        {
            Add(Of(patch.Routes[i], i));
        }

        for (var i = 0; i < patch.Streams.Count; i++)
        {
            Add(Of(patch.Streams[i], i));
        }

        for (var i = 0; i < show.Document.Rig.Cables.Count; i++)
        {
            Add(Of(show.Document.Rig.Cables[i], i));
        }
    }

    /// <summary>What claims a sink, in document order; the first one counts.</summary>
    public IReadOnlyList<Element> Claiming(PointIndex sink) => claims.GetValueOrDefault(sink.Value) ?? Nothing;

    /// <summary>What takes a source on, in document order.</summary>
    public IReadOnlyList<Element> Feeding(PointIndex source) => feeds.GetValueOrDefault(source.Value) ?? Nothing;

    /// <summary>The graph as it would be with a change.</summary>
    public Overlay With(PatchChange change)
    {
        var before = new HashSet<Element>();
        var after = new List<Element>();
        Collect(change.Routes, Hop.Route, Of, before, after);
        Collect(change.Streams, Hop.Stream, Of, before, after);
        Collect(change.Cables, Hop.Cable, Of, before, after);
        var changed = new Dictionary<int, int>();
        foreach (var element in before.Concat(after))
        {
            for (var position = 0; position < element.Width; position++)
            {
                var sink = element.To + position;
                if (graph.FixedSource(sink) is null && !changed.ContainsKey(sink.Value))
                {
                    changed.Add(sink.Value, Feeder(sink, before, after));
                }
            }
        }

        foreach (var point in changed.Keys.ToList())
        {
            if (changed[point] == graph.Upstreams[point])
            {
                changed.Remove(point);
            }
        }

        return new Overlay(graph, changed);
    }

    public IEnumerable<Element> Of(Route route, int index)
    {
        if (
            graph.Find(route.To, out var to) != ConnectionState.Connected
            || graph.GroupOf(to).Kind is not (PortKind.Sink or PortKind.Output or PortKind.Transmit)
        )
        {
            yield break;
        }

        if (route.From is not { } source)
        {
            yield return new Element(Hop.Route, index, 0, PointIndex.None, to, route.To.Width);
        }
        else if (
            source.Width == route.To.Width
            && graph.Find(source, out var from) == ConnectionState.Connected
            && graph.DeviceOf(from) == graph.DeviceOf(to)
            && graph.GroupOf(from).Kind is PortKind.Source or PortKind.Input or PortKind.Receive
        )
        {
            yield return new Element(Hop.Route, index, 0, from, to, route.To.Width);
        }
    }

    public IEnumerable<Element> Of(AudioStream stream, int index)
    {
        if (graph.Find(stream.From, out var from) != ConnectionState.Connected || graph.GroupOf(from) is not { Kind: PortKind.Transmit, IsCarrier: false })
        {
            yield break;
        }

        for (var i = 0; i < stream.To.Count; i++)
        {
            var channels = stream.To[i].Channels ?? new NumberRange(1, stream.From.Width);
            if (
                channels.Last <= stream.From.Width
                && channels.Width == stream.To[i].At.Width
                && graph.Find(stream.To[i].At, out var at) == ConnectionState.Connected
                && graph.GroupOf(at) is { Kind: PortKind.Receive, IsCarrier: false }
            )
            {
                yield return new Element(Hop.Stream, index, i, from + (channels.First - 1), at, channels.Width);
            }
        }
    }

    public IEnumerable<Element> Of(Cable cable, int index)
    {
        if (
            cable.From.Width == cable.To.Width
            && graph.Find(cable.From, out var from) == ConnectionState.Connected
            && graph.Find(cable.To, out var to) == ConnectionState.Connected
            && graph.GroupOf(from).Kind == PortKind.Output
            && graph.GroupOf(to).Kind == PortKind.Input
            && graph.DeviceOf(from) != graph.DeviceOf(to)
        )
        {
            yield return new Element(Hop.Cable, index, 0, from, to, cable.From.Width);
        }
    }

    private void Add(IEnumerable<Element> elements)
    {
        foreach (var element in elements)
        {
            List(byIndex, (element.Hop, element.Index)).Add(element);
            for (var position = 0; position < element.Width; position++)
            {
                List(claims, element.To.Value + position).Add(element);
                if (!element.From.IsNone)
                {
                    List(feeds, element.From.Value + position).Add(element);
                }
            }
        }
    }

    private static List<Element> List<T>(Dictionary<T, List<Element>> table, T point)
        where T : notnull
    {
        if (!table.TryGetValue(point, out var list))
        {
            table.Add(point, list = []);
        }

        return list;
    }

    private void Collect<T>(ListChange<T> change, Hop hop, Func<T, int, IEnumerable<Element>> of, HashSet<Element> before, List<Element> after)
        where T : class
    {
        if (change.IsEmpty)
        {
            return;
        }

        foreach (var (index, elements) in change.Replaced)
        {
            before.UnionWith(byIndex.GetValueOrDefault((hop, index)) ?? Nothing);
            foreach (var element in elements)
            {
                after.AddRange(of(element, index));
            }
        }

        foreach (var element in change.Added)
        {
            after.AddRange(of(element, int.MaxValue));
        }
    }

    /// <summary>What feeds a sink once some elements are gone and others have come: the first claim, or what the device does by itself.</summary>
    private int Feeder(PointIndex sink, HashSet<Element> before, List<Element> after)
    {
        Element? first = null;
        foreach (var claim in Claiming(sink))
        {
            if (!before.Contains(claim))
            {
                first = claim;
                break;
            }
        }

        foreach (var claim in after)
        {
            if (claim.Claims(sink) && (first is null || claim.Index < first.Index || (claim.Index == first.Index && claim.Sub < first.Sub)))
            {
                first = claim;
            }
        }

        return first is null ? graph.FactorySource(sink).Value
            : first.From.IsNone ? -1
            : first.SourceOf(sink).Value;
    }
}
