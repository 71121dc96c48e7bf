using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Resolving;

/// <summary>What feeds what, point by point, after factory routes, routes, streams, cables and links.</summary>
/// <remarks>
/// Every point has at most one point that feeds it: nothing is ever summed. Immutable and thread safe.
/// Built in time linear in points, routes, receivers and cables.
/// </remarks>
public sealed class SignalGraph
{
    internal const int Silent = -1;
    internal const int Looping = -2;

    private readonly DeviceNode[] devices;
    private readonly int[] firstPoints;
    private readonly Dictionary<string, int> deviceIndex;
    private readonly int[] upstream;
    private readonly HopKind[] via;
    private readonly int[] viaIndex;
    private readonly int[] origin;
    private FanOut? fanOut;

    internal SignalGraph(DeviceNode[] devices, Dictionary<string, int> deviceIndex, int[] upstream, HopKind[] via, int[] viaIndex, int[] origin)
    {
        this.devices = devices;
        this.deviceIndex = deviceIndex;
        this.upstream = upstream;
        this.via = via;
        this.viaIndex = viaIndex;
        this.origin = origin;
        firstPoints = new int[devices.Length];
        for (var i = 0; i < devices.Length; i++)
        {
            firstPoints[i] = devices[i].FirstPoint;
        }
    }

    /// <summary>How many points there are.</summary>
    public int PointCount => upstream.Length;

    internal ReadOnlySpan<int> Upstreams => upstream;

    internal ReadOnlySpan<HopKind> Hops => via;

    internal ReadOnlySpan<int> Origins => origin;

    internal bool HasLoops => origin.AsSpan().Contains(Looping);

    /// <summary>The device of an id, or null.</summary>
    public DeviceNode? Device(Id<Device> id) => deviceIndex.TryGetValue(id.Value, out var index) ? devices[index] : null;

    /// <summary>The device a point belongs to.</summary>
    public DeviceNode DeviceOf(PointIndex point)
    {
        // Devices without points share the first point of their follower; the last of equals owns it.
        var starts = firstPoints;
        var low = 0;
        var high = starts.Length;
        while (high - low > 1)
        {
            var middle = (low + high) >>> 1;
            if (starts[middle] <= point.Value)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return devices[low];
    }

    /// <summary>The port group a point belongs to.</summary>
    public GroupNode GroupOf(PointIndex point) => GroupOf(DeviceOf(point), point);

    internal static GroupNode GroupOf(DeviceNode device, PointIndex point) => device.Type.Groups[device.Type.GroupOf[point.Value - device.FirstPoint]];

    /// <summary>The number of a point in its group, from 1.</summary>
    public int NumberOf(PointIndex point)
    {
        var device = DeviceOf(point);
        return point.Value - device.FirstPoint - GroupOf(device, point).Offset + 1;
    }

    /// <summary>The address of a point.</summary>
    public Point Address(PointIndex point)
    {
        var device = DeviceOf(point);
        var group = GroupOf(device, point);
        return new Point(device.Id, group.Id, point.Value - device.FirstPoint - group.Offset + 1);
    }

    /// <summary>The address of a run of points of one group.</summary>
    public PointRange Address(PointIndex first, int width)
    {
        var point = Address(first);
        return new PointRange(point.Device, point.Group, point.Number, point.Number + width - 1);
    }

    /// <summary>Finds the first point of a run.</summary>
    /// <param name="range">The address.</param>
    /// <param name="first">The first point when the state is <see cref="ConnectionState.Connected"/>; else none.</param>
    public ConnectionState Find(PointRange range, out PointIndex first)
    {
        var state = Find(range, out _, out _, out var found);
        first = state == ConnectionState.Connected ? new PointIndex(found) : PointIndex.None;
        return state;
    }

    /// <summary>Finds the first point of a run, with the device and the group as far as they are known; -1 where the run does not exist.</summary>
    internal ConnectionState Find(PointRange range, out DeviceNode? device, out GroupNode? group, out int first)
    {
        first = -1;
        device = deviceIndex.TryGetValue(range.Device.Value, out var index) ? devices[index] : null;
        group = device?.Group(range.Group);
        if (device is null || group is null)
        {
            return ConnectionState.UnknownReference;
        }

        if (range.Last > group.Count)
        {
            return ConnectionState.OutOfRange;
        }

        first = device.FirstPoint + group.Offset + range.First - 1;
        return ConnectionState.Connected;
    }

    /// <summary>Finds a point.</summary>
    public PointIndex Find(Point point) =>
        Find(new PointRange(point.Device, point.Group, point.Number, point.Number), out var first) == ConnectionState.Connected ? first : PointIndex.None;

    /// <summary>The point that feeds a point; none when nothing does.</summary>
    public PointIndex Upstream(PointIndex point) => new(upstream[point.Value]);

    /// <summary>A point and all that feeds it, hop by hop, each point once: the way up that ends also in a loop. Empty for none.</summary>
    public UpwardWalk Upward(PointIndex point) => new(this, point, null);

    /// <summary>What brings signal to a point.</summary>
    public HopKind Via(PointIndex point) => via[point.Value];

    /// <summary>The position of that route, stream, cable, or link in its list, from 0; -1 for other kinds of hop.</summary>
    public int ViaIndex(PointIndex point) => viaIndex[point.Value];

    /// <summary>The real source a point carries; none when it is silent or in a loop. A real source carries itself.</summary>
    public PointIndex Origin(PointIndex point) => new(Math.Max(origin[point.Value], Silent));

    /// <summary>True when what feeds the point comes back to it, so that no real source is ever reached.</summary>
    public bool IsLooping(PointIndex point) => origin[point.Value] == Looping;

    /// <summary>The points directly fed by a point, in ascending order.</summary>
    public ReadOnlySpan<int> Fed(PointIndex point) => Fan().Fed(point.Value);

    /// <summary>
    /// All points that carry a real source, without the source itself, in ascending order; none for a point of a loop, which carries nothing.
    /// </summary>
    public IEnumerable<PointIndex> Carrying(PointIndex source)
    {
        if (IsLooping(source))
        {
            return [];
        }

        var reached = new List<PointIndex>();
        foreach (var point in Downward(source))
        {
            if (point != source)
            {
                reached.Add(point);
            }
        }

        reached.Sort();
        return reached;
    }

    /// <summary>A point and all that it feeds, over any number of hops, each point once.</summary>
    internal DownwardWalk Downward(PointIndex point) => new(this, point, null);

    /// <summary>The source a fixed sink always takes: a point, none for fixed silence, or null when the sink is not fixed.</summary>
    public PointIndex? FixedSource(PointIndex sink)
    {
        var device = DeviceOf(sink);
        var local = device.Type.FixedSource[sink.Value - device.FirstPoint];
        return local switch
        {
            CompiledProfile.NotFixed => null,
            CompiledProfile.FixedSilent => PointIndex.None,
            _ => new PointIndex(device.FirstPoint + local),
        };
    }

    /// <summary>True when a fixed sink can be set to nothing.</summary>
    public bool IsClearable(PointIndex sink)
    {
        var device = DeviceOf(sink);
        return device.Type.Clearable[sink.Value - device.FirstPoint];
    }

    /// <summary>The routing entry between the groups of two points of one device; null when nothing may be routed.</summary>
    public RoutingEntry? RoutingBetween(PointIndex from, PointIndex to)
    {
        var device = DeviceOf(to);
        return DeviceOf(from) == device ? device.Type.RoutingBetween(GroupOf(device, from), GroupOf(device, to)) : null;
    }

    /// <summary>The source that feeds a point before any patch: fixed, through or factory.</summary>
    public PointIndex FactorySource(PointIndex sink)
    {
        var device = DeviceOf(sink);
        var local = device.Type.Upstream[sink.Value - device.FirstPoint];
        return local < 0 ? PointIndex.None : new PointIndex(device.FirstPoint + local);
    }

    // Two threads may both make it; either is right.
    private FanOut Fan() => Volatile.Read(ref fanOut) ?? Interlocked.CompareExchange(ref fanOut, new FanOut(upstream), null) ?? fanOut;
}
