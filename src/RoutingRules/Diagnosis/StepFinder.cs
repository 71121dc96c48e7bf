using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Diagnosis;

/// <summary>Walks up from places where something is missing and finds, hop by hop, the one connection that would bring it.</summary>
internal sealed class StepFinder(SignalGraph graph)
{
    /// <summary>A source is carried by few points; beyond this many no more are looked at.</summary>
    private const int MostCarriers = 128;

    private readonly Dictionary<int, List<PointIndex>> carriers = [];
    private readonly SortedSet<Step> found = [];
    private readonly Overlay plain = new(graph, []);

    /// <summary>The steps, each once, in order.</summary>
    public IReadOnlyCollection<Step> Found => found;

    /// <summary>The points that are passed on the way up from a place of an unmet want, each with those wants.</summary>
    public Dictionary<int, List<Want>> Passed { get; } = [];

    public long Work { get; private set; }

    public void Add(Want want)
    {
        foreach (var place in want.Places)
        {
            for (var position = 0; position < want.Width; position++)
            {
                foreach (var point in graph.Upward(place + position))
                {
                    Work++;
                    if (!Passed.TryGetValue(point.Value, out var wants))
                    {
                        Passed.Add(point.Value, wants = []);
                    }

                    if (!wants.Contains(want))
                    {
                        wants.Add(want);
                    }
                }

                foreach (var source in want.Sources)
                {
                    if (!plain.Passes(place + position, source + position))
                    {
                        Climb(place + position, source + position);
                    }
                }
            }
        }
    }

    private void Climb(PointIndex place, PointIndex source)
    {
        foreach (var sink in graph.Upward(place))
        {
            Work++;
            if (graph.FixedSource(sink) is not null || graph.Via(sink) is HopKind.Through or HopKind.Carrier)
            {
                continue;
            }

            var group = graph.GroupOf(sink);
            var device = graph.DeviceOf(sink);
            Hop? hop = group.Kind switch
            {
                PortKind.Sink or PortKind.Output or PortKind.Transmit => Hop.Route,
                PortKind.Receive when !group.IsCarrier => Hop.Stream,
                PortKind.Input => Hop.Cable,
                _ => null,
            };
            foreach (var carrier in hop is null ? [] : Carriers(source))
            {
                Work++;
                var from = graph.GroupOf(carrier);
                var fits = hop switch
                {
                    Hop.Route => from.Kind is PortKind.Source or PortKind.Input or PortKind.Receive
                        && graph.RoutingBetween(carrier, sink) is { Mode: not RoutingMode.Fixed },
                    Hop.Stream => from is { Kind: PortKind.Transmit, IsCarrier: false } && graph.DeviceOf(carrier) != device,
                    _ => from.Kind == PortKind.Output && graph.DeviceOf(carrier) != device,
                };
                if (fits)
                {
                    found.Add(new Step(hop!.Value, sink, carrier));
                }
            }
        }
    }

    private List<PointIndex> Carriers(PointIndex source)
    {
        if (!carriers.TryGetValue(source.Value, out var points))
        {
            points = [];
            foreach (var point in graph.Downward(source))
            {
                Work++;
                if (points.Count == MostCarriers)
                {
                    break;
                }

                points.Add(point);
            }

            carriers.Add(source.Value, points);
        }

        return points;
    }
}
