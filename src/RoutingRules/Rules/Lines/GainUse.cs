using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Rules;

/// <summary>Which consoles get which inputs, for questions about gain.</summary>
internal sealed class GainUse
{
    private readonly SortedDictionary<int, List<DeviceNode>> consoles = [];
    private readonly HashSet<(int Input, string Console)> wanted = [];

    public GainUse(RuleContext context)
    {
        foreach (var line in context.Lines)
        {
            var entries = LineDelivery.Entries(context, line);
            foreach (var sink in LineDelivery.Sinks(context, line))
            {
                for (var position = 0; position < line.Width; position++)
                {
                    AddWanted(context, entries, position, context.DeviceOf(sink.At));
                    if (sink.State == EntryState.Served && Preamplifier(context, sink.At + position) is { IsNone: false } input)
                    {
                        Add(input, context.DeviceOf(sink.At));
                    }
                }
            }
        }
    }

    /// <summary>The inputs with a gain that serve lines, in ascending order, each with the consoles that get it in the order of the lines' channels.</summary>
    public IEnumerable<KeyValuePair<int, List<DeviceNode>>> Inputs => consoles;

    /// <summary>True when a line at the input names a channel of the console, whether it arrives or not.</summary>
    public bool IsWanted(PointIndex input, Id<Device> console) => wanted.Contains((input.Value, console.Value));

    /// <summary>True when the gain of inputs of the group can be set.</summary>
    public static bool HasGain(GroupNode group) => group.Kind == PortKind.Input && (group.Model.Level is null || group.Model.Level == SignalLevel.Mic);

    /// <summary>The consoles among the devices that an input reaches.</summary>
    public static HashSet<Id<Device>> Reached(RuleContext context, PointIndex input)
    {
        var found = new HashSet<Id<Device>> { context.DeviceOf(input).Id };
        foreach (var point in context.IsLooping(input) ? [] : FeedPlaces.Reached(context, input))
        {
            if (context.GroupOf(point).Kind is PortKind.Receive or PortKind.Sink)
            {
                found.Add(context.DeviceOf(point).Id);
            }
        }

        return found;
    }

    private void Add(PointIndex input, DeviceNode console)
    {
        if (console.Profile.Kind != DeviceKind.Console)
        {
            return;
        }

        if (!consoles.TryGetValue(input.Value, out var list))
        {
            consoles.Add(input.Value, list = []);
        }

        if (!list.Contains(console))
        {
            list.Add(console);
        }
    }

    private void AddWanted(RuleContext context, IReadOnlyList<PointIndex> entries, int position, DeviceNode console)
    {
        foreach (var entry in entries)
        {
            wanted.Add(((entry + position).Value, console.Id.Value));
        }
    }

    /// <summary>The input with a gain that is last on the way to a channel; none when there is none.</summary>
    private static PointIndex Preamplifier(RuleContext context, PointIndex sink)
    {
        for (var point = sink; !point.IsNone; point = context.Upstream(point))
        {
            if (context.GroupOf(point).Kind == PortKind.Input)
            {
                return HasGain(context.GroupOf(point)) ? point : PointIndex.None;
            }
        }

        return PointIndex.None;
    }
}
