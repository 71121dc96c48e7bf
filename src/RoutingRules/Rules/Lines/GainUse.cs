using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Which consoles get which inputs, for questions about gain.</summary>
internal sealed class GainUse
{
    private readonly RuleContext context;
    private readonly Stack<PointIndex> pending = new();
    private readonly List<(int Input, int Order, DeviceNode Console)> consoles = [];
    private readonly HashSet<(int Input, string Console)> wanted;
    private readonly HashSet<int> lined = [];

    public GainUse(RuleContext context)
    {
        this.context = context;
        wanted = new HashSet<(int Input, string Console)>(context.Lines.Count);
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

        consoles.Sort(static (x, y) => x.Input != y.Input ? x.Input.CompareTo(y.Input) : x.Order.CompareTo(y.Order));
    }

    /// <summary>The inputs with a gain that serve lines at several consoles, in ascending order, each with these consoles in the order of the lines' channels.</summary>
    public IEnumerable<(PointIndex Input, List<DeviceNode> Consoles)> Shared()
    {
        for (var start = 0; start < consoles.Count;)
        {
            var input = consoles[start].Input;
            List<DeviceNode>? several = null;
            var first = consoles[start].Console;
            for (; start < consoles.Count && consoles[start].Input == input; start++)
            {
                var console = consoles[start].Console;
                if (console != first && several?.Contains(console) != true)
                {
                    (several ??= [first]).Add(console);
                }
            }

            if (several is not null)
            {
                yield return (new PointIndex(input), several);
            }
        }
    }

    /// <summary>The one that all rules of a run share.</summary>
    public static GainUse Of(RuleContext context) => context.Shared(static asking => new GainUse(asking));

    /// <summary>True when a line at the input names a channel of the console, whether it arrives or not.</summary>
    public bool IsWanted(PointIndex input, Id<Device> console) => wanted.Contains((input.Value, console.Value));

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

        pending.Clear();
        pending.Push(input);
        while (pending.TryPop(out var point))
        {
            foreach (var next in context.Fed(point))
            {
                pending.Push(new PointIndex(next));
            }

            var device = context.DeviceOf(point);
            if (device.Id != own && SignalGraph.GroupOf(device, point).Kind is (PortKind.Receive or PortKind.Sink) and var kind)
            {
                if (device.Id == wanted)
                {
                    return true;
                }

                // Where no line enters, a receive slot may hold it only because its block holds something else, and a channel because nobody has routed
                // anything to it.
                reachesOther |= lined.Contains(input.Value) || (kind == PortKind.Sink && context.Via(point) != HopKind.Factory);
            }
        }

        return false;
    }

    private void Add(PointIndex input, DeviceNode console)
    {
        if (console.Profile.Kind != DeviceKind.Console)
        {
            return;
        }

        consoles.Add((input.Value, consoles.Count, console));
    }

    private void AddWanted(ValueList<PointIndex> entries, int position, DeviceNode console)
    {
        foreach (var entry in entries)
        {
            wanted.Add(((entry + position).Value, console.Id.Value));
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
