using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Losses;

/// <summary>Turns the show that came out of an assignment into steps: what to plug elsewhere, then what to load, device by device.</summary>
internal static class FallbackWriter
{
    public static ValueList<FallbackStep> Write(ResolvedShow before, ResolvedShow after, FallbackTask task, FallbackAttempt attempt)
    {
        var steps = new List<FallbackStep>(attempt.Displaced.Select(entry => Pull(before, entry.Demand)));
        foreach (var demand in task.Demands.Where(attempt.IsMoved))
        {
            steps.Add(Replug(before, demand, task, attempt));
        }

        steps.AddRange(Streams(before, after, task));
        steps.AddRange(Routes(before, after, task));
        return steps.ToValueList();
    }

    /// <summary>True for an output with any cable in it.</summary>
    public static bool IsCabled(SignalGraph graph, PointIndex output) => Cabled(graph, output).Any();

    /// <summary>The inputs that all cables of an output lead to, in rig order.</summary>
    private static IEnumerable<PointIndex> Cabled(SignalGraph graph, PointIndex output) =>
        graph.Fed(output).ToArray().Select(fed => new PointIndex(fed)).Where(fed => graph.Via(fed) == HopKind.Cable);

    private static FallbackStep Pull(ResolvedShow before, DemandNode demand) =>
        new()
        {
            Kind = FallbackStepKind.Pull,
            Device = before.Graph.DeviceOf(demand.Existing).Id,
            Demand = demand.Key,
            From = before.Graph.Address(demand.Existing, demand.Width),
            CableTo = Enumerable
                .Range(0, demand.Width)
                .SelectMany(position => Cabled(before.Graph, demand.Existing + position))
                .Select(sink => before.Graph.Address(sink))
                .ToValueList(),
        };

    private static FallbackStep Replug(ResolvedShow before, DemandNode demand, FallbackTask task, FallbackAttempt attempt)
    {
        var to = attempt.PlaceOf(demand)!.Value;
        before.Graph.Find(to, out var run);
        var cables = new List<Point>();
        var isWhole = true;
        for (var position = 0; demand.Feed is not null && position < demand.Width; position++)
        {
            // A place that has a cable of its own is where the document wants it heard; then none is moved.
            var isTaken = IsCabled(before.Graph, run + position) && !attempt.IsGivenUp(run + position);
            var moving = Cabled(before.Graph, demand.Existing + position)
                .Where(sink => !IsLost(before, task, sink.Value) && !task.Lost.Cables[before.Graph.ViaIndex(sink)])
                .ToList();
            isWhole &= !isTaken && moving.Count > 0;
            cables.AddRange(moving.Select(sink => before.Graph.Address(sink)));
        }

        return new FallbackStep
        {
            Kind = FallbackStepKind.Replug,
            Device = to.Device,
            Demand = demand.Key,
            From = before.Graph.Address(demand.Existing, demand.Width),
            To = to,
            CableTo = isWhole ? cables.ToValueList() : [],
            HasOwnCable = demand.Feed is not null && IsCabled(before.Graph, run) && !attempt.IsGivenUp(run),
            IsElsewhere = attempt.IsElsewhere(demand),
        };
    }

    /// <summary>Streams that are new or changed at a device that is left, and those that must let go of slots another takes.</summary>
    private static IEnumerable<FallbackStep> Streams(ResolvedShow before, ResolvedShow after, FallbackTask task)
    {
        var taken = new HashSet<int>();
        foreach (var stream in after.Streams)
        {
            taken.UnionWith(Slots(stream));
        }

        foreach (var stream in before.Streams)
        {
            var next = after.Streams.FirstOrDefault(other => other.Model.Id == stream.Model.Id);
            if (next is not null && next.Model == stream.Model)
            {
                continue;
            }

            var lets = Claims(stream).Except(next is null ? [] : Claims(next)).Where(claim => !IsLost(after, task, claim.Slot)).ToList();
            var takes = next is null ? [] : Claims(next).Except(Claims(stream)).ToList();
            if (takes.Count > 0 || lets.Exists(claim => taken.Contains(claim.Slot)) || (lets.Count > 0 && !IsLost(before, task, stream.From.Value)))
            {
                yield return Step(stream.Model.Id, next?.Model, Place(before, stream, task));
            }
        }

        foreach (var stream in after.Streams.Where(stream => !before.Streams.Any(other => other.Model.Id == stream.Model.Id)))
        {
            yield return Step(stream.Model.Id, stream.Model, stream.Model.From.Device);
        }
    }

    private static FallbackStep Step(Id<AudioStream> id, AudioStream? stream, Id<Device> sender) =>
        new()
        {
            Kind = FallbackStepKind.Stream,
            Device = stream?.From.Device ?? sender,
            StreamId = id,
            Stream = stream,
        };

    /// <summary>Where a stream is taken away: at its sender, or where the sender is lost at the first receiver that is left.</summary>
    private static Id<Device> Place(ResolvedShow show, StreamNode stream, FallbackTask task) =>
        stream.From.IsNone || !IsLost(show, task, stream.From.Value)
            ? stream.Model.From.Device
            : Claims(stream)
                .Where(claim => !IsLost(show, task, claim.Slot))
                .Select(claim => show.Graph.DeviceOf(new PointIndex(claim.Slot)).Id)
                .FirstOrDefault(stream.Model.From.Device);

    private static IEnumerable<int> Slots(StreamNode stream) => Claims(stream).Select(claim => claim.Slot);

    /// <summary>Which transmit slot a stream brings to which receive slot.</summary>
    private static IEnumerable<(int Slot, int From)> Claims(StreamNode stream)
    {
        for (var i = 0; i < stream.Receivers.Count; i++)
        {
            var receiver = stream.Receivers[i];
            for (var position = 0; receiver.State == ConnectionState.Connected && !stream.From.IsNone && position < receiver.Model.At.Width; position++)
            {
                yield return ((receiver.At + position).Value, (stream.From + (receiver.FirstChannel - 1 + position)).Value);
            }
        }
    }

    /// <summary>What sinks of devices that are left take now, in runs.</summary>
    private static IEnumerable<FallbackStep> Routes(ResolvedShow before, ResolvedShow after, FallbackTask task)
    {
        foreach (var device in before.Devices.Where(device => !task.Lost.Devices[device.Index]))
        {
            var routes = new List<Route>();
            foreach (var group in device.Groups.Where(group => group.Kind is PortKind.Sink or PortKind.Output or PortKind.Transmit))
            {
                for (var i = 0; i < group.Count; i++)
                {
                    var sink = device.First(group) + i;
                    var from = after.Graph.Upstream(sink);
                    if (from != before.Graph.Upstream(sink))
                    {
                        Append(routes, from.IsNone ? null : after.Graph.Address(from, 1), after.Graph.Address(sink, 1));
                    }
                }
            }

            foreach (var route in routes)
            {
                yield return new FallbackStep
                {
                    Kind = FallbackStepKind.Route,
                    Device = device.Id,
                    Route = route,
                };
            }
        }
    }

    private static void Append(List<Route> routes, PointRange? from, PointRange to)
    {
        if (
            routes.Count > 0
            && routes[^1] is var last
            && Follows(last.To, to)
            && (from is { } next ? last.From is { } known && Follows(known, next) : last.From is null)
        )
        {
            routes[^1] = last with { From = from is { } end ? Joined(last.From!.Value, end) : null, To = Joined(last.To, to) };
        }
        else
        {
            routes.Add(new Route { From = from, To = to });
        }
    }

    private static bool Follows(PointRange one, PointRange other) => one.Device == other.Device && one.Group == other.Group && one.Last + 1 == other.First;

    private static PointRange Joined(PointRange one, PointRange other) => new(one.Device, one.Group, one.First, other.Last);

    private static bool IsLost(ResolvedShow show, FallbackTask task, int point) => task.Lost.Devices[show.Graph.DeviceOf(new PointIndex(point)).Index];
}
