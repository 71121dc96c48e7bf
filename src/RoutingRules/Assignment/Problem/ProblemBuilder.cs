using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Signal;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Assignment.Problem;

/// <summary>Lays a resolved show out for assignment: blocks, limits, who reaches whom.</summary>
internal sealed class ProblemBuilder
{
    private readonly ResolvedShow show;
    private readonly SignalGraph graph;
    private readonly AssignmentOptions options;
    private readonly Exclusions without;
    private readonly BlockRouting blockRouting;
    private readonly BlockLayout layout;

    private ProblemBuilder(ResolvedShow show, AssignmentOptions options)
    {
        this.show = show;
        this.options = options;
        graph = show.Graph;
        without = Exclusions.Read(show, options.Without);
        blockRouting = new BlockRouting(show);
        layout = new BlockLayout(show, without);
    }

    /// <summary>Lays out a show.</summary>
    /// <param name="show">The show.</param>
    /// <param name="options">What is asked for.</param>
    /// <param name="cancellation">Leaves the demands that are not yet looked at no places but those they have or are pinned to.</param>
    /// <exception cref="ArgumentException">An option names something the rig does not have.</exception>
    public static AssignmentProblem Build(ResolvedShow show, AssignmentOptions options, CancellationToken cancellation = default) =>
        new ProblemBuilder(ExistingPlacements.ForAssignment(show, Exclusions.Read(show, options.Without).Marks(show)), options).Build(cancellation);

    private AssignmentProblem Build(CancellationToken cancellation)
    {
        var network = NetworkMapBuilder.Build(show.Document.Rig.Networks, [.. show.Devices], [.. show.Links], without.Links);
        var barred = Barred(out var dead);
        var spares = Spares(barred);
        var problem = new AssignmentProblem
        {
            Show = show,
            Options = options,
            Demands = new Demand[show.Demands.Count],
            TransmitBlocks = [.. layout.Transmit],
            ReceiveBlocks = [.. layout.Receive],
            TransmitBlockOf = layout.TransmitBlockOf,
            ReceiveBlockOf = layout.ReceiveBlockOf,
            FixedOutputsOf = FixedOutputs(out var blocks),
            Blocks = blockRouting,
            BlockOf = blocks,
            MustBeSilent = MustBeSilent(dead),
            Tolerated = Tolerated(),
            IsBarred = barred,
            IsExcludedPoint = ExcludedPoints(),
            NetworkBetween = NetworkBetween(network),
            SentLimit = Limits(profile => profile.Limits?.StreamsSent),
            ReceivedLimit = Limits(profile => profile.Limits?.StreamsReceived),
            PortGroupOf = layout.PortGroupOf,
            IsSpare = spares,
            Exposure = new Exposure(show),
            UsableOutputs = UsableOutputs(spares),
            IsExcluded = without.Devices,
            Network = network,
        };
        new CandidateBuilder(problem, cancellation).Fill(problem.Demands);
        problem.Given = new GivenPoints(problem);
        problem.Exposure.Learn(problem.Demands);
        KeptStreams.Mark(problem);
        problem.Links = LinkRoomBuilder.Build(problem);
        problem.Untried = new UntriedRoutes(problem).Devices();
        return problem;
    }

    private int[] Filled(int value)
    {
        var array = new int[graph.PointCount];
        Array.Fill(array, value);
        return array;
    }

    private bool[] ExcludedPoints()
    {
        var excluded = new bool[graph.PointCount];
        foreach (var (first, width) in without.Points)
        {
            excluded.AsSpan(first, width).Fill(true);
        }

        foreach (var device in show.Devices)
        {
            if (without.Devices[device.Index])
            {
                excluded.AsSpan(device.FirstPoint, device.Type.PointCount).Fill(true);
            }
        }

        return excluded;
    }

    private bool[] Barred(out bool[] dead)
    {
        var barred = ExcludedPoints();
        dead = ExcludedPoints();
        foreach (var mark in show.Marks)
        {
            barred.AsSpan(mark.First.Value, mark.Width).Fill(true);
            if (mark.IsDead)
            {
                dead.AsSpan(mark.First.Value, mark.Width).Fill(true);
            }
        }

        return barred;
    }

    private int[][] FixedOutputs(out int[]?[] blocks)
    {
        var outputs = new int[graph.PointCount][];
        blocks = new int[graph.PointCount][];
        Array.Fill(outputs, []);
        foreach (var device in show.Devices)
        {
            for (var local = 0; local < device.Type.PointCount; local++)
            {
                var source = device.Type.FixedSource[local];
                if (
                    source >= 0
                    && !device.Type.Clearable[local]
                    && device.Type.Groups[device.Type.GroupOf[local]].Kind == PortKind.Output
                    && layout.ReceiveBlockOf[device.FirstPoint + source] >= 0
                )
                {
                    ref var list = ref outputs[device.FirstPoint + source];
                    list = [.. list, device.FirstPoint + local];
                }
                else if (
                    source == CompiledProfile.NotFixed
                    && device.Type.Groups[device.Type.GroupOf[local]].Kind == PortKind.Output
                    && blockRouting.ReceiveSlot(device.FirstPoint + local) is >= 0 and var slot
                    && layout.ReceiveBlockOf[slot] >= 0
                )
                {
                    outputs[slot] = [.. outputs[slot], device.FirstPoint + local];
                    var (first, _, size) = blockRouting.Find(slot, device.FirstPoint + local)!.Value;
                    blocks[device.FirstPoint + local] = [.. Enumerable.Range(first, size)];
                }
            }
        }

        return outputs;
    }

    private bool[] MustBeSilent(bool[] dead)
    {
        var silent = new bool[graph.PointCount];
        for (var point = 0; point < silent.Length; point++)
        {
            silent[point] = !dead[point];
        }

        return silent;
    }

    private int[] Tolerated()
    {
        var tolerated = Filled(-1);
        for (var point = 0; options.KeepUnlisted && point < tolerated.Length; point++)
        {
            if (graph.GroupOf(new PointIndex(point)).Kind != PortKind.Output)
            {
                continue;
            }

            foreach (var at in graph.Upward(new PointIndex(point)))
            {
                if (layout.TransmitBlockOf[at.Value] >= 0)
                {
                    tolerated[point] = graph.Upstream(at).Value;
                    break;
                }
            }
        }

        return tolerated;
    }

    private int[] NetworkBetween(NetworkMap network)
    {
        var count = show.Devices.Count;
        var between = new int[count * count];
        Array.Fill(between, -1);
        for (var sender = 0; sender < count; sender++)
        {
            for (var receiver = 0; receiver < count; receiver++)
            {
                for (var net = 0; net < show.Document.Rig.Networks.Count && sender != receiver; net++)
                {
                    // The first network both are cabled to, whatever is left of it: a stream does not change networks because a box in between is gone.
                    if (show.Network.IsOn(net, show.Devices[sender]) && show.Network.IsOn(net, show.Devices[receiver]))
                    {
                        between[(sender * count) + receiver] = network.Path(net, show.Devices[sender], show.Devices[receiver]) is null ? -1 : net;
                        break;
                    }
                }
            }
        }

        return between;
    }

    private int[] Limits(Func<DeviceProfile, int?> limit)
    {
        var limits = new int[show.Devices.Count];
        foreach (var device in show.Devices)
        {
            limits[device.Index] = limit(device.Profile) is { } most ? Math.Max(0, most - options.Headroom) : int.MaxValue;
        }

        return limits;
    }

    private bool[] Spares(bool[] barred)
    {
        var spares = Array.ConvertAll(barred, static isBarred => !isBarred);
        foreach (var line in show.Lines)
        {
            foreach (var sink in line.Sinks)
            {
                for (var position = 0; !sink.IsNone && position < line.Width; position++)
                {
                    spares[sink.Value + position] = false;
                }
            }
        }

        return spares;
    }

    private int[] UsableOutputs(bool[] spares)
    {
        var usable = new int[layout.PortGroupCount];
        foreach (var device in show.Devices)
        {
            foreach (var group in device.Groups)
            {
                for (var i = 0; group.Kind == PortKind.Output && i < group.Count; i++)
                {
                    var point = device.FirstPoint + group.Offset + i;
                    usable[layout.PortGroupOf[point]] += spares[point] ? 1 : 0;
                }
            }
        }

        return usable;
    }
}
