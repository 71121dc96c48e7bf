using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <summary>Follows signal upstream through one patch, point by point.</summary>
internal sealed class PatchTrace
{
    private readonly RigFacts rig;
    private readonly Dictionary<Point, Point?> routes = [];
    private readonly Dictionary<Point, TraceStep> streams = [];
    private readonly Dictionary<Point, Chain> chains = [];
    private Dictionary<Point, List<Point>>? carriers;

    public PatchTrace(RigFacts rig, Patch patch)
    {
        this.rig = rig;
        Patch = patch;
        foreach (var route in patch.Routes)
            AddRoute(route);

        for (var i = 0; i < patch.Streams.Count; i++)
        {
            foreach (var receiver in patch.Streams[i].To)
                AddReceiver(patch.Streams[i], i, receiver);
        }
    }

    public Patch Patch { get; }

    /// <summary>Sinks that more than one route or stream of the patch names, in the order found.</summary>
    public List<Point> Doubled { get; } = [];

    /// <summary>The transmit slot a receive slot listens to and by which stream; null when it listens to nothing.</summary>
    public TraceStep? Listens(Point receive) => streams.TryGetValue(receive, out var step) ? step : null;

    /// <summary>Every receive slot that listens, with the transmit slot it listens to, in document order.</summary>
    public List<(Point At, Point From)> Listening()
    {
        var list = new List<(Point, Point)>();
        foreach (var stream in Patch.Streams)
        {
            foreach (var receiver in stream.To)
            {
                for (var i = 0; i < receiver.At.Width; i++)
                {
                    if (Listens(receiver.At[i]) is { } step)
                        list.Add((receiver.At[i], step.From));
                }
            }
        }

        return list;
    }

    /// <summary>Whether the patch names a sink, and with which source.</summary>
    public bool IsRouted(Point sink, out Point? source) => routes.TryGetValue(sink, out source);

    /// <summary>The real source of a point; null for silence.</summary>
    public Point? Source(Point point) => Follow(point).Source;

    /// <summary>The way from a point to its source.</summary>
    public Chain Follow(Point point)
    {
        if (chains.TryGetValue(point, out var known))
            return known;

        var points = new List<Point> { point };
        var steps = new List<TraceStep>();
        var looped = false;
        while (!looped && Upstream(points[^1]) is { } step)
        {
            looped = points.Contains(step.From);
            steps.Add(step);
            points.Add(step.From);
        }

        var chain = new Chain
        {
            Points = points,
            Steps = steps,
            Source = !looped && IsReal(points[^1]) ? points[^1] : null,
        };
        chains.Add(point, chain);
        return chain;
    }

    /// <summary>Every point that a signal passes on its way from a point, that point included, in rig order.</summary>
    public IReadOnlyList<Point> CarriersOf(Point source)
    {
        if (carriers is null)
        {
            carriers = [];
            foreach (var group in rig.Devices.SelectMany(device => device.Groups))
            {
                for (var number = 1; number <= group.Count; number++)
                    AddCarrier(carriers, group.At(number));
            }
        }

        return carriers.TryGetValue(source, out var list) ? list : [];
    }

    /// <summary>True when a run of sinks carries a run of sources, position by position.</summary>
    public bool Carries(PointRange sinks, PointRange sources)
    {
        if (sinks.Width != sources.Width)
            return false;

        for (var i = 0; i < sinks.Width; i++)
        {
            if (!rig.Exists(sinks[i]) || Follow(sinks[i]).IndexOf(sources[i]) < 0)
                return false;
        }

        return true;
    }

    /// <summary>One step upstream; null where the chain ends.</summary>
    public TraceStep? Upstream(Point point)
    {
        if (rig.Kind(point) is not { } kind)
            return null;

        var group = rig.Group(point)!;
        switch (kind)
        {
            case PortKind.Receive:
                return Listens(point) ?? (rig.CarriedFrom(point) is { } sent ? new TraceStep(StepKind.Carrier, sent) : null);
            case PortKind.Input:
                return rig.OutputCabledTo(point) is { } output ? new TraceStep(StepKind.Cable, output) : null;
            case PortKind.Source:
                return Through(group, point.Number);
            case PortKind.Network:
                return null;
        }

        // A way through a device is wire, and a selector picks its own source: no route changes either.
        if (group.ThroughFrom is not null || group.IsSelect)
            return Through(group, point.Number);

        if (group.FixedFrom is { } from)
        {
            if (point.Number > from.Count)
                return null;

            // Where a sink can be cleared, a route from its own source says that it is not.
            var own = from.At(point.Number);
            var named = group.IsClearable && routes.TryGetValue(point, out var written) ? (Written: true, From: written) : default;
            return !named.Written ? new TraceStep(StepKind.Fixed, own)
                : named.From is null ? null
                : new TraceStep(named.From == own ? StepKind.Route : StepKind.Fixed, own);
        }

        if (routes.TryGetValue(point, out var routed))
            return routed is { } source ? new TraceStep(StepKind.Route, source) : null;

        return group.FactorySource(point.Number) is { } factory ? new TraceStep(StepKind.Factory, factory) : null;
    }

    private void AddCarrier(Dictionary<Point, List<Point>> map, Point point)
    {
        foreach (var passed in Follow(point).Points.Distinct())
        {
            if (!map.TryGetValue(passed, out var list))
                map.Add(passed, list = []);

            list.Add(point);
        }
    }

    private static TraceStep? Through(GroupFacts group, int number) =>
        group.ThroughFrom is { } from && number <= from.Count ? new TraceStep(StepKind.Through, from.At(number)) : null;

    // A chain that ends at a bus, an open input or a selector has found a source; one that ends anywhere else is silent.
    private bool IsReal(Point end) =>
        rig.Kind(end) switch
        {
            PortKind.Source => rig.Group(end)!.ThroughFrom is null,
            PortKind.Input => rig.OutputCabledTo(end) is null,
            PortKind.Output or PortKind.Sink => rig.Group(end)!.IsSelect,
            _ => false,
        };

    private void AddRoute(Route route)
    {
        if (route.From is { } from && (from.Width != route.To.Width || from.Device != route.To.Device))
            return;

        for (var i = 0; i < route.To.Width; i++)
        {
            var sink = route.To[i];
            var source = route.From?[i];
            if (
                rig.Kind(sink) is not (PortKind.Output or PortKind.Sink or PortKind.Transmit)
                || (source is { } point && rig.Kind(point) is not (PortKind.Source or PortKind.Input or PortKind.Receive))
            )
                continue;

            if (!routes.TryAdd(sink, source))
                Doubled.Add(sink);
        }
    }

    private void AddReceiver(AudioStream stream, int index, StreamReceiver receiver)
    {
        var channels = receiver.Channels ?? new NumberRange(1, stream.From.Width);
        if (channels.Width != receiver.At.Width || channels.Last > stream.From.Width)
            return;

        for (var i = 0; i < receiver.At.Width; i++)
        {
            var (at, from) = (receiver.At[i], stream.From[channels.First - 1 + i]);
            if (rig.Kind(at) != PortKind.Receive || rig.Kind(from) != PortKind.Transmit)
                continue;

            if (!streams.TryAdd(at, new TraceStep(StepKind.Stream, from, index)))
                Doubled.Add(at);
        }
    }
}
