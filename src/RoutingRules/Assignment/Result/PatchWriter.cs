using System.Globalization;
using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Writes choices and their wiring as a patch: what the input says stays unless it has to change.</summary>
internal sealed partial class PatchWriter
{
    private const int NoRoute = -3;
    private const int Null = -1;

    private readonly AssignmentProblem problem;
    private readonly SignalGraph graph;
    private readonly WiringPlan wiring;
    private readonly SortedDictionary<int, int> wanted = [];
    private readonly HashSet<int> placedPoints = [];
    private readonly HashSet<int> placedLinePoints = [];
    private readonly HashSet<int> namedSinks = [];
    private readonly HashSet<int> feedSources = [];

    public PatchWriter(AssignmentProblem problem, int[] choices, WiringPlan wiring)
    {
        this.problem = problem;
        this.wiring = wiring;
        graph = problem.Show.Graph;
        foreach (var demand in problem.Demands)
        {
            AddRun(feedSources, demand.Node.Feed?.Source.Value ?? -1, demand.Node.Width);
            if (choices[demand.Index] < 0)
            {
                continue;
            }

            // A line without a place keeps no other line in the channels it names: next time it would seem to be served.
            if (demand.Node.Line is { } line)
            {
                foreach (var sink in line.Sinks)
                {
                    AddRun(namedSinks, sink.Value, line.Width);
                }
            }

            var candidate = demand.Candidates[choices[demand.Index]];
            AddRun(demand.Node.Line is null ? placedPoints : placedLinePoints, candidate.First, demand.Node.Width);
            foreach (var run in demand.Node.Line?.Model.From.At.IsEmpty == false ? demand.Node.Allowed : [])
            {
                // An analogue split brings the signal to all of them.
                AddRun(placedLinePoints, run.Value, demand.Node.Width);
            }

            foreach (var delivery in candidate.Deliveries)
            {
                AddRun(demand.Node.Line is null ? namedSinks : placedLinePoints, demand.Node.Line is null ? delivery.Sink : delivery.Source, delivery.Width);
                if (graph.GroupOf(new PointIndex(delivery.Sink)).Kind == PortKind.Output)
                {
                    // An output that a line is brought to is as good as placed there.
                    AddRun(placedPoints, delivery.Sink, delivery.Width);
                }

                for (var position = 0; position < delivery.Width; position++)
                {
                    if (delivery.IsLocal || graph.FixedSource(new PointIndex(delivery.Sink + position)) is { IsNone: false })
                    {
                        wanted[delivery.Sink + position] = delivery.IsLocal ? delivery.Source + position : FactorySource(delivery.Sink + position);
                    }
                    else
                    {
                        WantBlock(delivery.Sink + position);
                    }
                }
            }
        }
    }

    /// <summary>Channels that no line with a place names and that would have carried a placed line, in point order.</summary>
    public List<PointIndex> Cleared { get; } = [];

    /// <summary>Streams of the input that are gone, in document order.</summary>
    public List<Id<AudioStream>> RemovedStreams { get; } = [];

    /// <summary>Writes the patch, then clears outputs and channels that would carry what nobody placed there.</summary>
    /// <param name="resolve">Resolves a show.</param>
    public Show Write(Func<Show, ResolvedShow> resolve)
    {
        WantContents();
        foreach (var (slot, sink) in wiring.FreeRoutes)
        {
            wanted[sink] = slot;
        }

        var input = problem.Show.Document;
        var streams = Streams();
        for (var round = 0; ; round++)
        {
            var show = input with { Patch = input.Patch with { Streams = streams, Routes = Routes() } };
            if (round > 4 || !ClearLeftovers(resolve(show)))
            {
                Cleared.Sort();
                return show;
            }
        }
    }

    private static void AddRun(HashSet<int> points, int first, int width)
    {
        for (var position = 0; first >= 0 && position < width; position++)
        {
            points.Add(first + position);
        }
    }

    /// <summary>Routes the whole block that a sink with block routing belongs to.</summary>
    private void WantBlock(int sink)
    {
        var slot = graph.FixedSource(new PointIndex(sink)) is null ? problem.Blocks.ReceiveSlot(sink) : -1;
        if (slot >= 0 && problem.Blocks.Find(slot, sink) is { } together)
        {
            for (var position = 0; position < together.Size; position++)
            {
                wanted[together.FirstSink + position] = together.FirstSource + position;
            }
        }
    }

    private void WantContents()
    {
        var carried = wiring.Contents.ToDictionary(content => content.Slot, content => content.Source);
        foreach (var (slot, source) in wiring.Contents)
        {
            if (graph.FixedSource(new PointIndex(slot)) is null)
            {
                wanted[slot] = source;
            }
        }

        foreach (var id in wiring.UsedTransmit)
        {
            var block = problem.TransmitBlocks[id];
            for (var slot = block.First; slot < block.First + block.Width; slot++)
            {
                if (carried.TryGetValue(slot, out var source))
                {
                    wanted[slot] = source;
                }
                else if (!block.IsCarrier && Array.IndexOf(wiring.Untouched, slot) < 0)
                {
                    wanted[slot] = Null;
                }
            }
        }
    }

    private ValueList<AudioStream> Streams()
    {
        var result = new List<AudioStream>();
        var written = new HashSet<int>();
        foreach (var stream in problem.Show.Streams)
        {
            var block = stream.From.IsNone ? -1 : problem.TransmitBlockOf[stream.From.Value];
            var isWhole =
                block >= 0 && problem.TransmitBlocks[block].First == stream.From.Value && problem.TransmitBlocks[block].Width == stream.Model.From.Width;
            if (block >= 0 && problem.TransmitBlocks[block].IsKept)
            {
                result.Add(stream.Model with { To = AddReceivers(problem.TransmitBlocks[block], stream) });
            }
            else if (isWhole && Array.IndexOf(wiring.UsedTransmit, block) >= 0 && written.Add(block))
            {
                result.Add(Stream(problem.TransmitBlocks[block], stream.Model, stream));
            }
            else if (stream.State != ConnectionState.Connected)
            {
                result.Add(stream.Model);
            }
            else
            {
                RemovedStreams.Add(stream.Model.Id);
            }
        }

        foreach (var id in wiring.UsedTransmit)
        {
            var block = problem.TransmitBlocks[id];
            if (!block.IsCarrier && !written.Contains(id))
            {
                result.Add(
                    Stream(
                        block,
                        new AudioStream
                        {
                            Id = NewId(block, result),
                            Network = default,
                            From = graph.Address(new(block.First), block.Width),
                        }
                    )
                );
            }
        }

        return result.ToValueList();
    }

    private Id<AudioStream> NewId(TransmitBlock block, List<AudioStream> streams)
    {
        var first = graph.Address(new PointIndex(block.First));
        var name = string.Create(CultureInfo.InvariantCulture, $"{first.Device}-{((first.Number - 1) / block.Width) + 1}");
        var isOnlyGroup = graph.Device(first.Device)!.Groups.Count(group => group.Kind == PortKind.Transmit && !group.IsCarrier) == 1;
        name = isOnlyGroup ? name : string.Create(CultureInfo.InvariantCulture, $"{first.Device}-{first.Group}-{((first.Number - 1) / block.Width) + 1}");
        name = name.Length > AddressParser.MaxIdLength ? string.Create(CultureInfo.InvariantCulture, $"stream-{block.Id + 1}") : name;
        var id = name;
        for (var n = 2; streams.Any(stream => stream.Id.Value == id) || problem.Show.Document.Patch.Streams.Any(stream => stream.Id.Value == id); n++)
        {
            id = string.Create(CultureInfo.InvariantCulture, $"{name}.{n}");
        }

        return new(id);
    }

    private AudioStream Stream(TransmitBlock block, AudioStream model, StreamNode? old = null)
    {
        var network = NetworkOf(block);
        return model with { Network = network < 0 ? model.Network : problem.Show.Document.Rig.Networks[network].Id, To = Receivers(block, old) };
    }

    /// <summary>The network on which demands take a block; -1 when none does.</summary>
    private int NetworkOf(TransmitBlock block)
    {
        var taker = Array.Find(problem.ReceiveBlocks, receiver => Takes(receiver.Id, block) && !block.Bystanders.Contains(receiver.Id));
        return taker is null ? -1 : problem.NetworkFrom(block.Device, taker.Device);
    }

    private bool Takes(int receiveBlock, TransmitBlock block) =>
        wiring.ReceiveStart[receiveBlock] >= block.First && wiring.ReceiveStart[receiveBlock] < block.First + block.Width;

    private ValueList<StreamReceiver> AddReceivers(TransmitBlock block, StreamNode stream) => stream.Model.To.Concat(Receivers(block, null)).ToValueList();

    /// <summary>Receivers of the input that take what they took as they are written there, then the others run by run.</summary>
    private ValueList<StreamReceiver> Receivers(TransmitBlock block, StreamNode? old)
    {
        var receivers = new List<StreamReceiver>();
        var written = new HashSet<int>();
        foreach (var receiver in old?.Receivers ?? default)
        {
            if (Standing(block, receiver) is { } standing && !standing.Exists(written.Contains))
            {
                receivers.Add(receiver.Model);
                written.UnionWith(standing);
            }
        }

        for (var i = 0; i < problem.ReceiveBlocks.Length; i++)
        {
            var first = problem.ReceiveBlocks[i];
            var start = wiring.ReceiveStart[i];
            if (!Takes(i, block) || written.Contains(i))
            {
                continue;
            }

            var width = first.Width;
            while (
                i + 1 < problem.ReceiveBlocks.Length
                && !written.Contains(i + 1)
                && problem.ReceiveBlocks[i + 1].First == first.First + width
                && problem.ReceiveBlocks[i + 1].PortGroup == first.PortGroup
                && wiring.ReceiveStart[i + 1] == start + width
                && start + width < block.First + block.Width
            )
            {
                width += problem.ReceiveBlocks[++i].Width;
            }

            var at = graph.Address(new PointIndex(first.First), width);
            receivers.Add(
                new StreamReceiver { At = at, Channels = width == block.Width ? null : new NumberRange(start - block.First + 1, start - block.First + width) }
            );
        }

        return receivers.ToValueList();
    }

    /// <summary>The receive blocks of a receiver of the input if each of them takes the same slots now; else null.</summary>
    private List<int>? Standing(TransmitBlock block, ReceiverNode receiver)
    {
        var blocks = new List<int>();
        var end = receiver.At.Value + receiver.Model.At.Width;
        for (var slot = receiver.At.Value; slot >= 0 && slot < end; )
        {
            var id = problem.ReceiveBlockOf[slot];
            if (
                id < 0
                || problem.ReceiveBlocks[id].First != slot
                || slot + problem.ReceiveBlocks[id].Width > end
                || wiring.ReceiveStart[id] != block.First + receiver.FirstChannel - 1 + slot - receiver.At.Value
            )
            {
                return null;
            }

            blocks.Add(id);
            slot += problem.ReceiveBlocks[id].Width;
        }

        return blocks.Count == 0 ? null : blocks;
    }

    private ValueList<Route> Routes()
    {
        var routes = new List<Route>();
        var settled = new HashSet<int>();
        foreach (var route in problem.Show.Routes)
        {
            if (route.State != ConnectionState.Connected)
            {
                routes.Add(route.Model);
                continue;
            }

            AddSurviving(route, settled, routes);
        }

        AddNew(settled, routes);
        return routes.ToValueList();
    }

    /// <summary>Keeps the parts of a route that are still wanted.</summary>
    private void AddSurviving(RouteNode route, HashSet<int> settled, List<Route> routes)
    {
        var width = route.Model.To.Width;
        for (var from = 0; from < width; )
        {
            var until = from;
            while (until < width && Survives(route, until, settled))
            {
                until++;
            }

            if (until - from == width)
            {
                routes.Add(route.Model);
            }
            else if (until > from)
            {
                routes.Add(
                    route.Model with
                    {
                        From = route.IsNull ? null : graph.Address(route.From + from, until - from),
                        To = graph.Address(route.To + from, until - from),
                    }
                );
            }

            from = until + 1;
        }
    }

    private bool Survives(RouteNode route, int position, HashSet<int> settled)
    {
        var sink = route.To.Value + position;
        if (!wanted.TryGetValue(sink, out var source))
        {
            return true;
        }

        return source == (route.IsNull ? Null : route.From.Value + position) && settled.Add(sink);
    }

    private void AddNew(HashSet<int> settled, List<Route> routes)
    {
        var pending = new List<(int Sink, int Source)>();
        foreach (var (sink, source) in wanted)
        {
            var factory = FactorySource(sink);
            if (!settled.Contains(sink) && source != NoRoute && source != factory && sink != source)
            {
                pending.Add((sink, source));
            }
        }

        for (var i = 0; i < pending.Count; )
        {
            var width = 1;
            while (i + width < pending.Count && Continues(pending[i + width - 1], pending[i + width]))
            {
                width++;
            }

            routes.Add(
                new Route
                {
                    From = pending[i].Source < 0 ? null : graph.Address(new PointIndex(pending[i].Source), width),
                    To = graph.Address(new PointIndex(pending[i].Sink), width),
                }
            );
            i += width;
        }
    }

    private bool Continues((int Sink, int Source) last, (int Sink, int Source) next) =>
        next.Sink == last.Sink + 1
        && problem.PortGroupOf[next.Sink] == problem.PortGroupOf[last.Sink]
        && (
            next.Source < 0
                ? last.Source < 0
                : next.Source == last.Source + 1 && last.Source >= 0 && problem.PortGroupOf[next.Source] == problem.PortGroupOf[last.Source]
        );

    /// <summary>What feeds a sink without any route: the source a fixed one always takes, or the factory route.</summary>
    private int FactorySource(int sink) => graph.FactorySource(new PointIndex(sink)).Value;
}
