using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>Writes a wiring as a patch.</summary>
internal static class BruteForcePatch
{
    /// <summary>The input with the patch that a wiring stands for.</summary>
    public static Show Of(AssignmentFacts facts, BruteForceChoice[] choices, BruteForceState state)
    {
        var streams = Streams(facts, state);
        var routes = Routes(facts, choices, state, streams);
        var show = facts.Input with { Patch = facts.Input.Patch with { Streams = streams.ToValueList(), Routes = routes.Values.ToValueList() } };
        ClearChannels(facts, choices, show, routes);
        return show with { Patch = show.Patch with { Routes = routes.Values.ToValueList() } };
    }

    private static List<AudioStream> Streams(AssignmentFacts facts, BruteForceState state)
    {
        var streams = new List<AudioStream>();
        foreach (var block in state.Listens.GroupBy(pair => VectorCount.FirstOfBlock(facts.Rig, pair.Value)))
        {
            var size = facts.Rig.Group(block.Key)!.BlockSize;
            var staying = facts.StayingStreams.FirstOrDefault(stream => stream.From[0] == block.Key);
            var receivers = block.Select(pair => Receiver(facts, pair.Key, pair.Value, block.Key)).ToList();
            var old = facts.Input.Patch.Streams.FirstOrDefault(stream => stream.From[0] == block.Key);
            var network = facts.Networks.FirstCommon(facts.Rig.Device(block.Key.Device)!, facts.Rig.Device(receivers[0].At.Device)!);
            if (staying is null && old?.Network == network?.Id)
                receivers.AddRange(Unmentioned(facts, block.Key, state));

            streams.Add(
                new AudioStream
                {
                    Id = staying?.Id ?? new($"{block.Key.Device}-{block.Key.Group}-{block.Key.Number}"),
                    Network = staying?.Network ?? network?.Id ?? old?.Network ?? new("none"),
                    From = new PointRange(block.Key.Device, block.Key.Group, block.Key.Number, block.Key.Number + size - 1),
                    To = receivers.ToValueList(),
                    Keep = staying?.Keep ?? false,
                    Label = staying?.Label,
                }
            );
        }

        streams.AddRange(facts.StayingStreams.Where(stream => stream.To.IsEmpty));
        return streams;
    }

    private static StreamReceiver Receiver(AssignmentFacts facts, Point block, Point from, Point first)
    {
        var size = facts.Rig.Group(block)!.BlockSize;
        var channel = from.Number - first.Number + 1;
        return new StreamReceiver
        {
            At = new PointRange(block.Device, block.Group, block.Number, block.Number + size - 1),
            Channels = new NumberRange(channel, channel + size - 1),
        };
    }

    // What a receiver takes is what it took, or nothing.
    private static bool Agrees(AssignmentFacts facts, BruteForceState state, Point from, int size) =>
        Enumerable
            .Range(0, size)
            .Select(i => new Point(from.Device, from.Group, from.Number + i))
            .All(slot => Carried(facts, state, slot) is not { } source || facts.Before.Source(slot) == source);

    // A fixed sender carries its own positions whatever a demand needs of them.
    private static Point? Carried(AssignmentFacts facts, BruteForceState state, Point slot) =>
        facts.Rig.Group(slot)!.IsRigid ? facts.Before.Source(slot) : state.Contents.GetValueOrDefault(slot);

    private static IEnumerable<StreamReceiver> Unmentioned(AssignmentFacts facts, Point block, BruteForceState state) =>
        facts
            .Before.Listening()
            .Where(pair =>
                VectorCount.FirstOfBlock(facts.Rig, pair.From) == block
                && VectorCount.FirstOfBlock(facts.Rig, pair.At) == pair.At
                && !facts.IsMentioned(pair.At.Device)
                && !facts.Rig.IsExcluded(pair.At)
                && !state.Listens.ContainsKey(pair.At)
                && Agrees(facts, state, pair.From, facts.Rig.Group(pair.At)!.BlockSize)
            )
            .Select(pair => Receiver(facts, pair.At, pair.From, block));

    private static SortedDictionary<string, Route> Routes(AssignmentFacts facts, BruteForceChoice[] choices, BruteForceState state, List<AudioStream> streams)
    {
        var routes = new SortedDictionary<string, Route>(StringComparer.Ordinal);
        var sent = streams
            .Where(stream => facts.StayingStreams.All(staying => staying.Id != stream.Id))
            .SelectMany(stream => Enumerable.Range(0, stream.From.Width).Select(i => stream.From[i]))
            .ToHashSet();
        var missed = facts
            .Demands.SelectMany(demand => (demand.Line?.To ?? default).Where(sink => !choices[demand.Index].Sinks.Contains(sink)))
            .SelectMany(sink => Enumerable.Range(0, sink.Width).Select(i => sink[i]))
            .ToHashSet();
        var placed = facts
            .Demands.Where(demand => demand.Line is null && choices[demand.Index].At is not null)
            .SelectMany(demand => demand.Occupies(choices[demand.Index].At!.Value))
            .ToHashSet();
        foreach (var point in facts.Rig.Devices.SelectMany(device => device.Groups).SelectMany(group => Enumerable.Range(1, group.Count).Select(group.At)))
        {
            var group = facts.Rig.Group(point)!;
            var isNamed = facts.Before.IsRouted(point, out var old);
            if (state.Routes.TryGetValue(point, out var source))
                Set(point, group.FixedFrom is null ? source : null, group.FixedFrom is null);
            else if (group.Kind == PortKind.Transmit && sent.Contains(point) && !group.IsRigid)
                Set(point, state.Contents.GetValueOrDefault(point), group.FixedFrom is null || !state.Contents.ContainsKey(point));
            else if (group.Kind == PortKind.Transmit && old is { } before && IsMisplaced(facts.Rig, state, before, point))
                Set(point, null, true);
            else if (missed.Contains(point) && !group.IsRigid && group.Kind != PortKind.Receive)
                Set(point, null, true);
            else if (
                group.Kind == PortKind.Output
                && group.ThroughFrom is null
                && !group.IsRigid
                && (isNamed || group.IsClearable || IsFedFromNetwork(facts, group, point, placed))
            )
                Set(point, null, true);
            else
                Set(point, old, isNamed);
        }

        return routes;

        void Set(Point to, Point? from, bool isWritten)
        {
            if (isWritten)
                routes[to.ToString()] = new Route { From = from is { } point ? Run(point) : null, To = Run(to) };
        }
    }

    // What a device plays by itself as soon as it arrives, unless a feed stands where it arrives: that goes on sounding.
    private static bool IsFedFromNetwork(AssignmentFacts facts, GroupFacts group, Point output, HashSet<Point> placed) =>
        group.FactorySource(output.Number) is { } source && facts.Rig.Kind(source) == PortKind.Receive && !placed.Contains(source);

    // An idle slot whose block lies at another distance than the ones in use, where the device has but one distance for all.
    private static bool IsMisplaced(RigFacts rig, BruteForceState state, Point from, Point to) =>
        BruteForceBlocks.Entry(rig, from, to) is { Reordering: false } entry
        && state.Distances.TryGetValue((to.Device, entry.From, entry.To), out var distance)
        && distance != from.Number - to.Number;

    private static void ClearChannels(AssignmentFacts facts, BruteForceChoice[] choices, Show show, SortedDictionary<string, Route> routes)
    {
        var trace = new PatchTrace(facts.Rig, show.Patch);
        var lines = facts
            .Demands.Where(demand => demand.Line is not null && choices[demand.Index].At is not null)
            .SelectMany(demand => demand.Occupies(choices[demand.Index].At!.Value))
            .ToHashSet();
        var named = facts
            .Demands.SelectMany(demand => demand.Line?.To ?? default)
            .SelectMany(sink => Enumerable.Range(0, sink.Width).Select(i => sink[i]))
            .ToHashSet();
        foreach (
            var group in facts
                .Rig.Devices.Where(device => device.IsKind(DeviceKind.Console))
                .SelectMany(device => device.Groups)
                .Where(group => group.Kind == PortKind.Sink)
        )
        {
            foreach (
                var point in Enumerable
                    .Range(1, group.Count)
                    .Select(group.At)
                    .Where(point => !named.Contains(point) && trace.Follow(point).Points.Any(lines.Contains))
            )
                routes[point.ToString()] = new Route { To = Run(point) };
        }
    }

    private static PointRange Run(Point point) => new(point.Device, point.Group, point.Number, point.Number);
}
