using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Feeds;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Lines;

/// <summary>Reports channels that a route gives a line which the line does not name, beside one of the same console that it does.</summary>
/// <remarks>
/// Channels that get the line by a factory route alone are leftovers and exempt. One finding for each line and console; entities are both and the channels.
/// </remarks>
public sealed class LineOnTwoChannels : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR6002",
            Name = "line-on-two-channels",
            Title = "Line on a second channel nobody asked for",
            Family = RuleFamily.Lines,
            Severity = Severity.Note,
            Checks = "No route brings a line to a channel that no line names while it arrives at another channel of the same console.",
            Why = "A double patch is a fine tool when it is meant; when it is not, the line is mixed twice and one fader does not mute it.",
            Remedy = "Clear the channel, or name it in the line if the double patch is meant.",
            Source = "common practice, no source; channel maps allow one input on two outputs (AMWA IS-08, fan-out)",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var named = new PointSet(context.PointCount);
        foreach (var line in context.Lines)
        {
            context.LookedAt(line.Sinks.Count);
            foreach (var sink in line.Sinks)
            {
                named.Add(sink, line.Width);
            }
        }

        var entering = Entering(context);

        Arrivals? arrivals = null;
        SortedDictionary<(int Line, int Device), List<string>>? extras = null;
        for (var i = 0; context.Lines.Count > 0 && i < context.Routes.Count; i++)
        {
            var route = context.Routes[i];
            for (var position = 0; !route.From.IsNone && position < route.Model.To.Width; position++)
            {
                var sink = route.To + position;
                if (
                    context.ViaIndex(sink) == route.Index
                    && context.Via(sink) == HopKind.Route
                    && context.GroupOf(sink).Kind == PortKind.Sink
                    && !named.Contains(sink)
                    && (context.Origin(sink).IsNone || entering.Contains(context.Origin(sink)))
                    && (arrivals ??= new Arrivals(context)).LineOf.TryGetValue(context.Origin(sink).Value, out var line)
                    && arrivals.At.Contains((line.Index, context.DeviceOf(sink).Index))
                )
                {
                    var key = (line.Index, context.DeviceOf(sink).Index);
                    (extras ??= []).TryAdd(key, []);
                    extras[key].Add(context.Address(sink).ToString());
                }
            }
        }

        if (extras is not null)
        {
            Report(context, extras);
        }
    }

    /// <summary>The real sources of all lines.</summary>
    private static PointSet Entering(RuleContext context)
    {
        var entering = new PointSet(context.PointCount);
        foreach (var line in context.Lines)
        {
            foreach (var entry in LineDelivery.Entries(context, line))
            {
                for (var position = 0; position < line.Width; position++)
                {
                    entering.Add(context.Origin(entry + position), 1);
                }
            }
        }

        return entering;
    }

    private static void Report(RuleContext context, SortedDictionary<(int Line, int Device), List<string>> extras)
    {
        foreach (var ((line, device), channels) in extras)
        {
            channels.Sort(StringComparer.Ordinal);
            var model = context.Lines[line];
            context.Report(
                $"Line '{model.DisplayName}' is on {Wording.Names(channels, false)} too, which it does not name.",
                $"/lines/{line}/to",
                [
                    Entity.Of("line", model.Model.Id),
                    Entity.Of("device", context.Devices[device].Id),
                    .. channels.ConvertAll(channel => Entity.Of("channel", channel)),
                ]
            );
        }
    }

    /// <summary>What the lines bring in and where they arrive; made only where a route leads one to a channel that no line names.</summary>
    private sealed class Arrivals
    {
        public Arrivals(RuleContext context)
        {
            foreach (var line in context.Lines)
            {
                Add(context, line);
            }
        }

        /// <summary>The first line of each real source.</summary>
        public Dictionary<int, LineNode> LineOf { get; } = [];

        /// <summary>The lines at the devices at which they arrive.</summary>
        public HashSet<(int Line, int Device)> At { get; } = [];

        private void Add(RuleContext context, LineNode line)
        {
            foreach (var entry in LineDelivery.Entries(context, line))
            {
                for (var position = 0; position < line.Width; position++)
                {
                    LineOf.TryAdd(context.Origin(entry + position).Value, line);
                }
            }

            foreach (var sink in LineDelivery.Sinks(context, line))
            {
                if (sink.State == EntryState.Served)
                {
                    At.Add((line.Index, context.DeviceOf(sink.At).Index));
                }
            }
        }
    }
}
