using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.ChannelMaps;

/// <summary>Puts the mappings of the stream ports of a device into the patch of a show, by the field names of IEEE 1722.1 (from memory).</summary>
/// <remarks>
/// An input port that is named is taken whole: slots without a mapping take nothing. What a device sends is a run of slots in a show and stands with the
/// stream, so an output port must say what the show says. The whole is judged: new errors about streams (family RR4) at the device refuse it.
/// </remarks>
public static class StreamPortImport
{
    /// <summary>Puts mappings into a show.</summary>
    /// <param name="engine">Knows the profiles and judges.</param>
    /// <param name="show">The show.</param>
    /// <param name="id">The device.</param>
    /// <param name="utf8Json">The mappings as <see cref="StreamPortMap"/> writes them, with or without a byte order mark.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ChannelMapException">The show has no such device, its profile is not known, or the device has no slots.</exception>
    public static MapImportResult Apply(RoutingEngine engine, Show show, Id<Device> id, ReadOnlyMemory<byte> utf8Json)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(show);
        var resolved = engine.Resolve(show);
        var device = StreamPortMap.Find(resolved, id);
        var reader = new StreamPortReader(resolved, device);
        var ports = reader.Read(utf8Json);
        var problems = reader.Problems.ToList();
        var moves = new List<MapMove>();
        var streams = show.Patch.Streams.ToArray();
        foreach (var group in device.Groups.Where(ports.ContainsKey))
        {
            if (group.Kind == PortKind.Transmit)
            {
                problems.AddRange(Differing(resolved, device, group, ports[group]));
            }
            else
            {
                Receive(resolved, device, group, ports[group], streams, moves);
            }
        }

        if (problems.Count > 0)
        {
            return new MapImportResult { Problems = problems.ToValueList() };
        }

        var edits = new List<ShowEdit>();
        foreach (var (index, stream) in show.Patch.Streams.Index())
        {
            if (streams[index] != stream)
            {
                edits.Add(ShowEdit.Replace(ShowLists.Streams, index, stream, streams[index]));
            }
        }

        return MapJudgement.Of(engine, resolved, edits, moves, finding => IsAbout(finding, id));
    }

    private static bool IsAbout(Finding finding, Id<Device> device) =>
        finding.Severity == Severity.Error
        && finding.Rule.StartsWith("RR4", StringComparison.Ordinal)
        && finding.Entities.Any(entity => entity.Id == device.Value || entity.Id.StartsWith($"{device}/", StringComparison.Ordinal));

    private static IEnumerable<string> Differing(ResolvedShow show, DeviceNode device, GroupNode group, List<StreamPortMapping> wanted)
    {
        var now = Plain(StreamPortMap.Sent(show, device, group));
        var then = Plain(wanted);
        then.SymmetricExceptWith(now);
        foreach (var stream in then.Select(mapping => mapping.Stream).Distinct().OrderBy(stream => stream.Value, StringComparer.Ordinal))
        {
            yield return $"The port of '{group.Id}' sends other slots of the stream '{stream}' than the show says; change the slots it is sent from in the "
                + "show, or take the port out of the map.";
        }
    }

    /// <summary>Without the numbers of streams, which only name them.</summary>
    private static HashSet<(Id<AudioStream> Stream, int Channel, int Cluster)> Plain(IEnumerable<StreamPortMapping> mappings) =>
        [.. mappings.Select(mapping => (mapping.Stream, mapping.Channel, mapping.Cluster))];

    private static void Receive(
        ResolvedShow show,
        DeviceNode device,
        GroupNode group,
        List<StreamPortMapping> wanted,
        AudioStream[] streams,
        List<MapMove> moves
    )
    {
        var before = StreamPortMap.Received(show, device, group).ToDictionary(mapping => mapping.Cluster);
        var after = wanted.ToDictionary(mapping => mapping.Cluster);
        var changed = new HashSet<Id<AudioStream>>();
        for (var slot = 0; slot < group.Count; slot++)
        {
            var (old, next) = (before.GetValueOrDefault(slot), after.GetValueOrDefault(slot));
            if (old?.Stream == next?.Stream && old?.Channel == next?.Channel)
            {
                continue;
            }

            changed.UnionWith(new[] { old, next }.Where(mapping => mapping is not null).Select(mapping => mapping!.Stream));
            moves.Add(new MapMove(show.Graph.Address(device.First(group) + slot), SourceOf(old), SourceOf(next)));
        }

        for (var index = 0; index < streams.Length; index++)
        {
            if (changed.Contains(streams[index].Id))
            {
                streams[index] = streams[index] with { To = Receivers(show, device, group, streams[index], wanted).ToValueList() };
            }
        }

        Point? SourceOf(StreamPortMapping? mapping) =>
            mapping is null ? null
            : streams.First(stream => stream.Id == mapping.Stream).From is var from ? new Point(from.Device, from.Group, from.First + mapping.Channel)
            : null;
    }

    /// <summary>The receivers of a stream: those elsewhere as they are, then runs of this group, each as it was where it says the same.</summary>
    private static List<StreamReceiver> Receivers(ResolvedShow show, DeviceNode device, GroupNode group, AudioStream stream, List<StreamPortMapping> wanted)
    {
        var old = stream.To.Where(receiver => receiver.At.Device == device.Id && receiver.At.Group == group.Id).ToList();
        var receivers = stream.To.Where(receiver => !old.Contains(receiver)).ToList();
        var mine = wanted.Where(mapping => mapping.Stream == stream.Id).OrderBy(mapping => mapping.Cluster).ToList();
        for (var first = 0; first < mine.Count; )
        {
            var last = first;
            while (last + 1 < mine.Count && mine[last + 1].Cluster == mine[last].Cluster + 1 && mine[last + 1].Channel == mine[last].Channel + 1)
            {
                last++;
            }

            var isWhole = mine[first].Channel == 0 && last - first + 1 == stream.From.Width;
            var run = new StreamReceiver
            {
                At = show.Graph.Address(device.First(group) + mine[first].Cluster, last - first + 1),
                Channels = isWhole ? null : new NumberRange(mine[first].Channel + 1, mine[last].Channel + 1),
            };
            receivers.Add(old.Find(receiver => receiver.At == run.At && ChannelsOf(receiver) == ChannelsOf(run)) ?? run);
            first = last + 1;
        }

        return receivers;

        NumberRange ChannelsOf(StreamReceiver receiver) => receiver.Channels ?? new NumberRange(1, stream.From.Width);
    }
}
