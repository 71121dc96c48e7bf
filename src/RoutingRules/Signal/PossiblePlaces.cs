using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Signal;

/// <summary>Finds the points that may serve feeds and lines.</summary>
internal sealed class PossiblePlaces
{
    private readonly DeviceFinder devices;
    private readonly SignalGraph graph;
    private readonly PinnedPlaces pinned;

    /// <summary>Every cable that brings something: the input with the output it comes from.</summary>
    private readonly List<(int Input, int Output)> cabledFrom = [];

    /// <summary>Outputs with a cable to somebody's ears, whatever else they are cabled to.</summary>
    private readonly HashSet<int> toRacks = [];
    private readonly List<int> found = [];
    private readonly Dictionary<(ValueList<Id<Device>> Devices, ValueList<Id<Zone>> Zones, int Width, int Parity), ValueList<PointIndex>> outputs = [];
    private readonly Dictionary<
        (ValueList<Id<Device>> Devices, ValueList<Id<Zone>> Zones, int Width, int Parity, bool IsLine, bool NeedsPhantom),
        ValueList<PointIndex>
    > inputs = [];

    public PossiblePlaces(DeviceNode[] devices, SignalGraph graph, CableNode[] cables)
    {
        this.devices = new DeviceFinder(devices);
        this.graph = graph;
        pinned = new PinnedPlaces(graph);
        foreach (var cable in cables)
        {
            for (var position = 0; cable.State == ConnectionState.Connected && position < cable.Model.From.Width; position++)
            {
                var (output, input) = (cable.From + position, cable.To + position);

                // Of several cables to one input only one brings something.
                if (graph.Upstream(input) != output)
                {
                    continue;
                }

                cabledFrom.Add((input.Value, output.Value));
                if (IsRack(graph.DeviceOf(input)))
                {
                    toRacks.Add(output.Value);
                }
            }
        }

        cabledFrom.Sort();
    }

    /// <summary>The runs of outputs a feed may take at a destination.</summary>
    public ValueList<PointIndex> Outputs(Destination to, int width, int parity)
    {
        if (to.At is { } at)
        {
            return at.Width == width && graph.Find(at, out var first) == ConnectionState.Connected && pinned.PlacedRun(first, width) is { IsNone: false } placed
                ? [placed]
                : [];
        }

        // Many feeds ask for the same place; what stands there is collected once.
        if (!outputs.TryGetValue((to.Devices, to.Zones, width, parity), out var runs))
        {
            found.Clear();
            foreach (var (index, byZone) in devices.Find(to.Devices, to.Zones))
            {
                AddLineOutputs(devices[index], !byZone, found);
            }

            runs = Runs(found, width, parity);
            outputs.Add((to.Devices, to.Zones, width, parity), runs);
        }

        return runs;
    }

    private void AddLineOutputs(DeviceNode device, bool byName, List<int> points)
    {
        var hasLineOutputs = false;
        foreach (var group in device.Groups)
        {
            if (!group.IsLineOutput || group.Count == 0 || IsBehindProcessing(device, group))
            {
                continue;
            }

            hasLineOutputs = true;
            for (var i = 0; i < group.Count; i++)
            {
                var point = device.FirstPoint + group.Offset + i;
                if (!toRacks.Contains(point))
                {
                    points.Add(point);
                }
            }
        }

        if (hasLineOutputs || !byName)
        {
            return;
        }

        var start = cabledFrom.BinarySearch((device.FirstPoint, -1));
        for (var i = start < 0 ? ~start : start; i < cabledFrom.Count && cabledFrom[i].Input < device.FirstPoint + device.Type.PointCount; i++)
        {
            var output = cabledFrom[i].Output;
            if (
                graph.GroupOf(new PointIndex(output)) is { IsLineOutput: true } group
                && (IsRack(device) || !toRacks.Contains(output))
                && !IsBehindProcessing(graph.DeviceOf(new PointIndex(output)), group)
            )
            {
                points.Add(output);
            }
        }
    }

    /// <summary>What such outputs carry is decided at the inputs.</summary>
    private static bool IsBehindProcessing(DeviceNode device, GroupNode group)
    {
        foreach (var through in device.Profile.Through)
        {
            if (through.Kind != ThroughKind.Select && through.To == group.Id)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The runs of inputs a line may enter at.</summary>
    public ValueList<PointIndex> Inputs(Line line, PointIndex source, int parity)
    {
        if (line.From.Source is not null)
        {
            return source.IsNone ? [] : [source];
        }

        if (!line.From.At.IsEmpty)
        {
            var named = new List<PointIndex>();
            foreach (var at in line.From.At)
            {
                if (
                    at.Width == line.Width
                    && graph.Find(at, out var first) == ConnectionState.Connected
                    && graph.GroupOf(first).Kind == PortKind.Input
                    && !named.Contains(first)
                )
                {
                    named.Add(first);
                }
            }

            return [.. named];
        }

        var key = (line.From.Devices, line.From.Zones, line.Width, parity, line.Kind == LineKind.Line, line.Phantom == PhantomNeed.Required);
        if (!inputs.TryGetValue(key, out var runs))
        {
            runs = CollectInputs(line, parity);
            inputs.Add(key, runs);
        }

        return runs;
    }

    private ValueList<PointIndex> CollectInputs(Line line, int parity)
    {
        found.Clear();
        foreach (var (index, _) in devices.Find(line.From.Devices, line.From.Zones))
        {
            var device = devices[index];
            foreach (var group in device.Groups)
            {
                for (var i = 0; Suits(group, line) && i < group.Count; i++)
                {
                    var point = device.FirstPoint + group.Offset + i;
                    if (graph.Hops[point] != HopKind.Cable)
                    {
                        found.Add(point);
                    }
                }
            }
        }

        return Runs(found, line.Width, parity);
    }

    /// <summary>True for an input group a line may use: its level and, where phantom is required, a supply.</summary>
    internal static bool Suits(GroupNode group, Line line) =>
        group.Kind == PortKind.Input
        && (group.Model.Level is not { } level || level == SignalLevel.Mic || (line.Kind == LineKind.Line && level == SignalLevel.Line))
        && (line.Phantom != PhantomNeed.Required || group.Model.Phantom);

    private static bool IsRack(DeviceNode device) => device.Profile.Kind == DeviceKind.TransmitterRack;

    /// <summary>First points of the runs of a width within the points: any single, or pairs inside one group whose first number has the parity.</summary>
    private ValueList<PointIndex> Runs(List<int> points, int width, int parity)
    {
        points.Sort();
        DropDoubles(points);
        var count = 0;
        for (var i = 0; i + width <= points.Count; i++)
        {
            var first = new PointIndex(points[i]);
            if (
                width > 1
                && (
                    points[i + width - 1] != points[i] + width - 1
                    || graph.NumberOf(first) % 2 != parity
                    || graph.GroupOf(first) != graph.GroupOf(first + (width - 1))
                    || graph.DeviceOf(first) != graph.DeviceOf(first + (width - 1))
                )
            )
            {
                continue;
            }

            points[count++] = first.Value;
        }

        var runs = new PointIndex[count];
        for (var i = 0; i < count; i++)
        {
            runs[i] = new PointIndex(points[i]);
        }

        return ValueList.Adopt(runs);
    }

    /// <summary>A device may be named beside another that it is cabled to; each point counts once.</summary>
    private static void DropDoubles(List<int> points)
    {
        var kept = 0;
        for (var i = 0; i < points.Count; i++)
        {
            if (i == 0 || points[i] != points[i - 1])
            {
                points[kept++] = points[i];
            }
        }

        points.RemoveRange(kept, points.Count - kept);
    }
}
