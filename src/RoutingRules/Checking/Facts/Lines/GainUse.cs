using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Facts.Lines;

/// <summary>Which consoles get which inputs, for questions about gain.</summary>
internal sealed class GainUse
{
    private readonly RuleContext context;
    private readonly List<(int Input, int Console)> consoles;
    private readonly List<(int Input, int Console)> wanted;
    private readonly PointSet lined;

    public GainUse(RuleContext context)
    {
        this.context = context;
        wanted = new List<(int Input, int Console)>(2 * context.Lines.Count);
        consoles = new List<(int Input, int Console)>(2 * context.Lines.Count);
        lined = new PointSet(context.PointCount);
        foreach (var line in context.Lines)
        {
            var entries = LineDelivery.Entries(context, line);
            foreach (var sink in LineDelivery.Sinks(context, line))
            {
                for (var position = 0; position < line.Width; position++)
                {
                    AddWanted(entries, position, context.DeviceOf(sink.At));
                    if (sink.State == EntryState.Served && Preamplifier(context, sink.At + position) is { IsNone: false } input)
                    {
                        Add(input, context.DeviceOf(sink.At));
                    }
                }
            }
        }

        wanted.Sort();
        consoles.Sort();
    }

    /// <summary>The inputs with a gain that serve lines at several consoles, in ascending order.</summary>
    public IEnumerable<PointIndex> Shared()
    {
        var last = -1;
        for (var i = 1; i < consoles.Count; i++)
        {
            var (input, console) = consoles[i];
            if (input != last && consoles[i - 1].Input == input && consoles[i - 1].Console != console)
            {
                last = input;
                yield return new PointIndex(input);
            }
        }
    }

    /// <summary>The consoles at which lines are served from an input, in rig order.</summary>
    public IEnumerable<DeviceNode> Consoles(PointIndex input)
    {
        var start = consoles.BinarySearch((input.Value, -1));
        for (var i = ~start; i < consoles.Count && consoles[i].Input == input.Value; i++)
        {
            if (i == ~start || consoles[i] != consoles[i - 1])
            {
                yield return context.Devices[consoles[i].Console];
            }
        }
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static GainUse Of(RuleContext context) => context.Shared(static asking => new GainUse(asking));

    /// <summary>True when a line at the input names a channel of the console, whether it arrives or not.</summary>
    public bool IsWanted(PointIndex input, Id<Device> console) =>
        context.Device(console) is { } device && wanted.BinarySearch((input.Value, device.Index)) >= 0;

    /// <summary>True when the gain of inputs of the group can be set.</summary>
    public static bool HasGain(GroupNode group) => group.Kind == PortKind.Input && (group.Model.Level is null || group.Model.Level == SignalLevel.Mic);

    /// <summary>True when a device is the one of an input or gets it.</summary>
    /// <param name="input">The input.</param>
    /// <param name="wanted">The device.</param>
    /// <param name="reachesOther">Set when any other device uses the input: gets it where a line enters, or routes it to a sink.</param>
    public bool Reaches(PointIndex input, Id<Device> wanted, ref bool reachesOther)
    {
        var own = context.DeviceOf(input).Id;
        if (own == wanted)
        {
            return true;
        }

        if (context.IsLooping(input))
        {
            return false;
        }

        foreach (var point in context.Downward(input))
        {
            var device = context.DeviceOf(point);
            if (device.Id != own && SignalGraph.GroupOf(device, point).Kind is (PortKind.Receive or PortKind.Sink) and var kind)
            {
                if (device.Id == wanted)
                {
                    return true;
                }

                // Where no line enters, a receive slot may hold it only because its block holds something else, and a channel because nobody has routed
                // anything to it.
                reachesOther |= lined.Contains(input) || (kind == PortKind.Sink && context.Via(point) != HopKind.Factory);
            }
        }

        return false;
    }

    private void Add(PointIndex input, DeviceNode console)
    {
        if (console.Profile.Kind == DeviceKind.Console)
        {
            consoles.Add((input.Value, console.Index));
        }
    }

    private void AddWanted(ValueList<PointIndex> entries, int position, DeviceNode console)
    {
        foreach (var entry in entries)
        {
            wanted.Add(((entry + position).Value, console.Index));
            lined.Add((entry + position).Value);
        }
    }

    /// <summary>The input with a gain that is last on the way to a channel; none when there is none.</summary>
    private static PointIndex Preamplifier(RuleContext context, PointIndex sink)
    {
        foreach (var point in context.Upward(sink))
        {
            if (context.GroupOf(point).Kind == PortKind.Input)
            {
                return HasGain(context.GroupOf(point)) ? point : PointIndex.None;
            }
        }

        return PointIndex.None;
    }
}
