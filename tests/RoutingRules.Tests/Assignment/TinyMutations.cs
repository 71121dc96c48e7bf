using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>Changes patches at random and reads off the trace which demands the changed patch happens to serve.</summary>
internal sealed class TinyMutations(TinyDice dice, AssignmentFacts facts)
{
    /// <summary>A neighbour of a result, a few changes away.</summary>
    public Show Mutate(Show show)
    {
        var changes = dice.From(1, 4);
        for (var i = 0; i < changes; i++)
        {
            show = show with
            {
                Patch = dice.From(1, 5) switch
                {
                    1 => AddRoute(show.Patch),
                    2 => ChangeRoute(show.Patch),
                    3 => Subscribe(show.Patch),
                    4 => Unsubscribe(show.Patch),
                    _ => MoveSource(show.Patch),
                },
            };
        }

        return show;
    }

    /// <summary>Placements that the trace of a patch allows: each demand in turn at a point that carries it, chosen at random.</summary>
    public (PointRange?[] At, ValueList<Placement> Placements) Serve(Show show)
    {
        var trace = new PatchTrace(facts.Rig, show.Patch);
        var at = new PointRange?[facts.Demands.Count];
        var taken = new HashSet<Point>();
        foreach (var demand in facts.Demands)
        {
            var runs = demand.IsSplit ? [demand.Runs[0]] : demand.Runs.Concat(demand.EvenRuns).ToArray();
            dice.Shuffle(runs);
            var isFirstChoice = dice.In(70);
            var served = runs.Where(run => Serves(trace, demand, run) && !demand.Occupies(run).Any(taken.Contains))
                .OrderBy(run => isFirstChoice && demand.Existing != run)
                .ToList();
            if (served.Count == 0)
                continue;

            at[demand.Index] = served[0];
            taken.UnionWith(demand.Occupies(served[0]));
        }

        return (
            at,
            facts
                .Demands.Where(demand => at[demand.Index] is not null)
                .Select(demand => new Placement { Demand = demand.Key, At = at[demand.Index]!.Value })
                .ToValueList()
        );
    }

    private static bool Serves(PatchTrace trace, DemandFacts demand, PointRange run) =>
        demand.Line is { } line
            ? line.To.Any(sink => (demand.IsSplit ? demand.Runs : (IReadOnlyList<PointRange>)[run]).Any(from => trace.Carries(sink, from)))
            : trace.Carries(run, demand.Feed!.Source);

    private Patch AddRoute(Patch patch)
    {
        var device = dice.Pick(facts.Rig.Devices);
        if (device.Profile!.Routing.IsEmpty)
            return patch;

        var entry = dice.Pick(device.Profile.Routing);
        var (from, to) = (device.Group(entry.From)!, device.Group(entry.To)!);
        var sink = to.At(dice.From(1, to.Count));
        var source = dice.In(20) ? (Point?)null : from.At(entry.Mode == RoutingMode.Fixed ? Math.Min(sink.Number, from.Count) : dice.From(1, from.Count));
        return patch with
        {
            Routes = [.. patch.Routes.Where(route => route.To[0] != sink), new Route { From = source is { } point ? Run(point) : null, To = Run(sink) }],
        };
    }

    private Patch ChangeRoute(Patch patch)
    {
        if (patch.Routes.IsEmpty)
            return patch;

        var (one, other) = (dice.From(0, patch.Routes.Count - 1), dice.From(0, patch.Routes.Count - 1));
        var routes = patch.Routes.ToArray();
        if (dice.In(50))
            return patch with { Routes = [.. routes.Where((_, i) => i != one)] };

        (routes[one], routes[other]) = (routes[one] with { From = routes[other].From }, routes[other] with { From = routes[one].From });
        return patch with { Routes = [.. routes.Where(route => route.From is not { } from || from.Device == route.To.Device)] };
    }

    // Moves what one slot carries to another slot of the same device.
    private Patch MoveSource(Patch patch)
    {
        var sent = patch.Routes.Where(route => route.From is not null && facts.Rig.Kind(route.To[0]) == PortKind.Transmit).ToList();
        if (sent.Count == 0)
            return patch;

        var route = dice.Pick(sent);
        var slot = facts.Rig.Group(route.To)!.At(dice.From(1, facts.Rig.Group(route.To)!.Count));
        return patch with
        {
            Routes = [.. patch.Routes.Where(old => old != route && old.To[0] != slot), route with { From = null }, route with { To = Run(slot) }],
        };
    }

    private Patch Subscribe(Patch patch)
    {
        var receivers = facts.Rig.Devices.SelectMany(device => device.Groups).Where(group => group.Kind == PortKind.Receive && group.LastWhole > 0).ToList();
        var senders = facts.Rig.Devices.SelectMany(device => device.Groups).Where(group => group.Kind == PortKind.Transmit && group.LastWhole > 0).ToList();
        if (receivers.Count == 0 || senders.Count == 0)
            return patch;

        var (receiver, sender) = (dice.Pick(receivers), dice.Pick(senders));
        if (sender.BlockSize % receiver.BlockSize != 0 || sender.Device == receiver.Device)
            return patch;

        var block = (dice.From(0, (receiver.LastWhole / receiver.BlockSize) - 1) * receiver.BlockSize) + 1;
        var first = (dice.From(0, (sender.LastWhole / sender.BlockSize) - 1) * sender.BlockSize) + 1;
        var part = dice.From(0, (sender.BlockSize / receiver.BlockSize) - 1) * receiver.BlockSize;
        var at = new PointRange(receiver.Device.Model.Id, receiver.Model.Id, block, block + receiver.BlockSize - 1);
        var to = new StreamReceiver { At = at, Channels = new(part + 1, part + receiver.BlockSize) };
        var from = new PointRange(sender.Device.Model.Id, sender.Model.Id, first, first + sender.BlockSize - 1);
        var streams = patch.Streams.Select(stream => Without(stream, at)).OfType<AudioStream>().ToList();
        var index = streams.FindIndex(stream => stream.From == from);
        if (index >= 0)
            streams[index] = streams[index] with { To = [.. streams[index].To, to] };
        else
            streams.Add(
                new AudioStream
                {
                    Id = new($"{from.Device}-{first}"),
                    Network = new("net"),
                    From = from,
                    To = [to],
                }
            );

        return patch with
        {
            Streams = streams.ToValueList(),
        };
    }

    private Patch Unsubscribe(Patch patch)
    {
        var all = patch.Streams.SelectMany(stream => stream.To).ToList();
        if (all.Count == 0)
            return patch;

        var at = dice.Pick(all).At;
        return patch with { Streams = patch.Streams.Select(stream => Without(stream, at)).OfType<AudioStream>().ToValueList() };
    }

    private static AudioStream? Without(AudioStream stream, PointRange at)
    {
        var left = stream.To.Where(receiver => receiver.At != at).ToValueList();
        return left.Count == stream.To.Count ? stream
            : left.IsEmpty && !stream.Keep ? null
            : stream with { To = left };
    }

    private static PointRange Run(Point point) => new(point.Device, point.Group, point.Number, point.Number);
}
