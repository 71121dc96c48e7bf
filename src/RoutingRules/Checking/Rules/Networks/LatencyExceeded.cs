using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Networks;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Networks;

/// <summary>Reports feeds and lines that arrive too late.</summary>
/// <remarks>
/// One finding for each device at which they arrive and kind of signal; entities are the device, what arrives (in-ear, feed or line) and
/// the places. Feeds count from the bus to the last device that plays them; recordings and broadcasts do not count. What ends in
/// somebody's ears is in-ear whatever its role says. The message names the place to which time is counted; the identity is the place that the patch
/// decides. What profiles and networks do not state counts as 0, and the message says so.
/// </remarks>
public sealed class LatencyExceeded : Rule<ResolvedShow>
{
    private const double Tolerance = 1e-9;

    private static readonly RuleOption MaximumMilliseconds = new()
    {
        Name = "maximumMilliseconds",
        Doc = "How late a feed or a line may arrive.",
        Default = 10,
        Minimum = 0.1,
        Maximum = 1000,
    };

    private static readonly RuleOption MaximumInEarMilliseconds = new()
    {
        Name = "maximumInEarMilliseconds",
        Doc =
            "How late an in-ear feed, or another that ends in somebody's ears, may arrive; less than others, because singers hear their own voice "
            + "through the head at once and the two colour each other.",
        Default = 5,
        Minimum = 0.1,
        Maximum = 1000,
    };

    private static readonly string[] Kinds = ["in-ear", "feed", "line"];

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR5010",
            Name = "latency-exceeded",
            Title = "Signal arrives late",
            Family = RuleFamily.Network,
            Severity = Severity.Warning,
            Checks =
                "The latencies that profiles and networks state on the path of a feed or line, presentation offsets and receiver buffers of "
                + "networks included, add up to 10 ms at most, for in-ear feeds to 5 ms.",
            Why = "Performers who hear themselves late play behind or take the mix off; late lines smear against everything that is nearer.",
            Remedy = "Take a network hop or a processor out of the path, or shorten the packet time or the receiver buffer of the network.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
            Options = [MaximumMilliseconds, MaximumInEarMilliseconds],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var latency = SignalLatency.Of(context, subject);
        var late = new SortedDictionary<(int Device, int Kind), Late>();
        foreach (var demand in context.Demands)
        {
            if (demand.Existing.IsNone)
            {
                continue;
            }

            if (demand.Line is { } line)
            {
                CheckLine(context, latency, late, demand, line);
                continue;
            }

            var role = demand.Feed!.Model.Role;
            var kind = role == FeedRole.InEar || EarDemands.IsHeard(context.Ears, demand.Existing, demand.Width) ? 0 : 1;
            if (kind == 1 && (role == FeedRole.Record || role == FeedRole.Broadcast))
            {
                continue;
            }

            context.LookedAt();
            var isPartial = false;
            var sum = latency.To(demand.Existing, ref isPartial) + latency.Beyond(demand.Existing, ref isPartial, out var end);
            if (sum > Limit(context, kind) + Tolerance)
            {
                Add(
                    late,
                    (context.DeviceOf(demand.Existing).Index, kind),
                    demand.DisplayName,
                    context.Address(demand.Existing, demand.Width).ToString(),
                    end == demand.Existing ? null : context.Address(end).ToString(),
                    sum,
                    isPartial,
                    $"/feeds/{demand.Feed.Index}/to/{demand.Entry}"
                );
            }
        }

        foreach (var (key, found) in late)
        {
            Report(context, context.Devices[key.Device], key.Kind, found);
        }
    }

    private static void CheckLine(
        RuleContext context,
        SignalLatency latency,
        SortedDictionary<(int Device, int Kind), Late> late,
        DemandNode demand,
        LineNode line
    )
    {
        var origin = context.Origin(demand.Existing);
        for (var i = 0; i < line.Sinks.Count; i++)
        {
            var sink = line.Sinks[i];
            if (sink.IsNone || origin.IsNone || context.Origin(sink) != origin)
            {
                continue;
            }

            context.LookedAt();
            var isPartial = false;
            var sum = latency.To(sink, ref isPartial);
            if (sum > Limit(context, 2) + Tolerance)
            {
                Add(
                    late,
                    (context.DeviceOf(sink).Index, 2),
                    line.DisplayName,
                    line.Model.To[i].ToString(),
                    null,
                    sum,
                    isPartial,
                    $"/lines/{line.Index}/to/{i}"
                );
            }
        }
    }

    private static double Limit(RuleContext context, int kind) => context.Value(kind == 0 ? MaximumInEarMilliseconds : MaximumMilliseconds);

    private static void Add(
        SortedDictionary<(int Device, int Kind), Late> late,
        (int Device, int Kind) key,
        string name,
        string place,
        string? end,
        double sum,
        bool isPartial,
        string pointer
    )
    {
        if (!late.TryGetValue(key, out var found))
        {
            late.Add(key, found = new Late { Pointer = pointer });
        }

        found.Places.Add(place);
        found.IsPartial |= isPartial;
        if (sum > found.Max)
        {
            (found.Name, found.Place, found.Max) = (name, end is null ? place : $"{end}, behind {place},", sum);
        }
    }

    private static void Report(RuleContext context, DeviceNode device, int kind, Late found)
    {
        var what = kind switch
        {
            0 => "in-ear feed",
            1 => "feed",
            _ => "line",
        };
        var limit = string.Create(CultureInfo.InvariantCulture, $"{Limit(context, kind):0.###} ms");
        var most = string.Create(CultureInfo.InvariantCulture, $"{found.Max:0.##} ms");
        var partial = found.IsPartial ? " Parts whose latency is not stated count as 0." : "";
        var start = kind == 2 ? "after entering" : "after leaving its bus";
        context.Report(
            found.Places.Count == 1
                ? $"{char.ToUpperInvariant(what[0])}{what[1..]} '{found.Name}' arrives at {found.Place} {most} {start}, later than {limit}.{partial}"
                : string.Create(
                    CultureInfo.InvariantCulture,
                    $"{found.Places.Count} {what}s arrive at {device.Id} later than {limit}; the latest is '{found.Name}' at {found.Place} after "
                        + $"{most}.{partial}"
                ),
            found.Pointer,
            [Entity.Of("device", device.Id), Entity.Of("signal", Kinds[kind]), .. found.Places.ConvertAll(place => Entity.Of("at", place))]
        );
    }

    private sealed class Late
    {
        public required string Pointer { get; init; }

        public List<string> Places { get; } = [];

        public bool IsPartial { get; set; }

        public string Name { get; set; } = "";

        public string Place { get; set; } = "";

        public double Max { get; set; }
    }
}
