using System.Globalization;
using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Verification;

/// <content>Streams, limits, links.</content>
internal sealed partial class ResultCheck
{
    private bool Stays(AudioStream stream) => facts.IsStaying(stream);

    private void CheckStreams()
    {
        var carrying = deliveries.Select(delivery => delivery.Stream).ToHashSet();
        var ids = new HashSet<Id<AudioStream>>();
        var blocks = new Dictionary<Point, AudioStream>();
        for (var i = 0; i < result.Patch.Streams.Count; i++)
        {
            var stream = result.Patch.Streams[i];
            if (!ids.Add(stream.Id))
                Report($"Two streams are called {stream.Id}.");

            if (!blocks.TryAdd(stream.From[0], stream))
                Report($"{stream.Id} and {blocks[stream.From[0]].Id} send the same block {stream.From}; one stream is enough.");

            if (!carrying.Contains(i))
            {
                if (Stays(stream) || IsOutOfUse(stream))
                    continue;

                Report($"{stream.Id} carries no demand; remove it.");
            }

            if (facts.IsStaying(stream) && facts.StayingStreams.Contains(stream))
            {
                if (!HasWay(stream, stream))
                    Report($"{stream.Id} brings a demand, but has no path over the network {stream.Network}.");

                continue;
            }

            if (rig.Group(stream.From) is { Kind: PortKind.Transmit } sender)
                CheckStream(stream, sender);
            else
                Report($"{stream.Id} is sent from {stream.From}, which are no transmit slots.");
        }
    }

    // What excluded devices still have in the patch is nobody's business.
    private bool IsOutOfUse(AudioStream stream) =>
        facts.Input.Patch.Streams.Any(old => old.Id == stream.Id)
        && (rig.IsExcluded(stream.From.Device) || (!stream.To.IsEmpty && stream.To.All(receiver => rig.IsExcluded(receiver.At.Device))));

    private void CheckStream(AudioStream stream, GroupFacts sender)
    {
        if (stream.From.Width != sender.BlockSize || (stream.From.First - 1) % sender.BlockSize != 0 || stream.From.Last > sender.LastWhole)
            Report($"{stream.Id} must be one whole block of {sender.BlockSize} transmit slots, and {stream.From} is none.");

        var old = facts.Input.Patch.Streams.FirstOrDefault(candidate => candidate.From == stream.From);
        var hasWay = HasWay(stream, old);
        foreach (var receiver in stream.To)
        {
            // A stream that stays keeps its own network and its receivers as they are written.
            if (old is not null && facts.IsStaying(old) && old.To.Contains(receiver))
                continue;

            if (rig.Group(receiver.At) is not { Kind: PortKind.Receive } group)
            {
                Report($"{stream.Id} goes to {receiver.At}, which are no receive slots.");
                continue;
            }

            CheckReceiver(stream, sender, receiver, group);
            if (hasWay && facts.IsMentioned(receiver.At.Device) && stream.Network != facts.Networks.FirstCommon(sender.Device, group.Device)?.Id)
                Report(
                    $"{stream.Id} uses the network {stream.Network}, but not as the first one that {sender.Device.Model.Id} and {group.Device.Model.Id} share."
                );
        }

        if (!hasWay)
            Report($"{stream.Id} has no path over the network {stream.Network} to every receiver.");
    }

    // What must stay stays even where it has no way, as long as no delivery depends on it.
    private bool HasWay(AudioStream stream, AudioStream? old)
    {
        return Tree(stream with { To = stream.To.Where(receiver => !MayLackWay(receiver)).ToValueList() }) is not null;

        bool MayLackWay(StreamReceiver receiver) =>
            old is not null
            && (facts.IsStaying(old) || !facts.IsMentioned(receiver.At.Device))
            && old.To.Any(before => before.At == receiver.At)
            && !deliveries.Any(delivery =>
                delivery.Receive.Any(slot =>
                    slot.Device == receiver.At.Device && slot.Group == receiver.At.Group && slot.Number >= receiver.At.First && slot.Number <= receiver.At.Last
                )
            );
    }

    private void CheckReceiver(AudioStream stream, GroupFacts sender, StreamReceiver receiver, GroupFacts group)
    {
        var channels = receiver.Channels ?? new NumberRange(1, stream.From.Width);
        var size = group.BlockSize;
        if ((receiver.At.First - 1) % size != 0 || receiver.At.Width % size != 0 || receiver.At.Last > group.LastWhole)
            Report($"{stream.Id} must fill whole blocks of {size} receive slots, and {receiver.At} does not.");
        else if (channels.Width != receiver.At.Width || channels.Last > stream.From.Width || (channels.First - 1) % size != 0 || sender.BlockSize % size != 0)
            Report($"{stream.Id} must give {receiver.At} whole parts of {size} channels, and channels {channels} of {stream.From.Width} are none.");

        if (rig.IsExcluded(receiver.At.Device) && before.Listens(receiver.At[0])?.From != after.Listens(receiver.At[0])?.From)
            Report($"{stream.Id} goes to {receiver.At}, which must not be used.");
    }

    private HashSet<(Id<Link> Link, bool IsForward)>? Tree(AudioStream stream)
    {
        if (rig.Group(stream.From) is not { } sender)
            return null;

        var receivers = stream.To.Select(receiver => rig.Group(receiver.At)).OfType<GroupFacts>().Where(group => !group.Device.IsExcluded);
        return facts.Networks.Tree(stream.Network, sender, receivers);
    }

    // The directed links that a stream loads, whether or not it reaches every receiver.
    private HashSet<(Id<Link> Link, bool IsForward)> Loaded(AudioStream stream)
    {
        if (rig.Group(stream.From) is not { } sender || rig.IsExcluded(stream.From.Device))
            return [];

        var receivers = stream.To.Select(receiver => rig.Group(receiver.At)).OfType<GroupFacts>().Where(group => !group.Device.IsExcluded);
        return facts.Networks.Tree(stream.Network, sender, receivers, skipsLost: true)!;
    }

    private void CheckLimits()
    {
        var sent = new Dictionary<DeviceFacts, HashSet<Point>>();
        var received = new Dictionary<DeviceFacts, HashSet<Point>>();
        foreach (var (to, from) in after.Listening())
        {
            if (rig.IsExcluded(to.Device) || rig.IsExcluded(from.Device))
                continue;

            var block = VectorCount.FirstOfBlock(rig, from);
            Add(sent, rig.Device(from.Device)!, block);
            Add(received, rig.Device(to.Device)!, block);
        }

        foreach (var device in rig.Devices)
        {
            if (device.Profile?.Limits is not { } limits)
                continue;

            CheckLimit(
                device,
                sent.GetValueOrDefault(device),
                limits.StreamsSent,
                "sends",
                block => facts.StayingStreams.Any(stream => stream.From[0] == block)
            );
            CheckLimit(
                device,
                received.GetValueOrDefault(device),
                limits.StreamsReceived,
                "takes",
                block =>
                    !facts.IsMentioned(device.Model.Id)
                    || facts.StayingStreams.Any(stream => stream.From[0] == block && stream.To.Any(receiver => receiver.At.Device == device.Model.Id))
            );
        }

        static void Add(Dictionary<DeviceFacts, HashSet<Point>> map, DeviceFacts device, Point block)
        {
            if (!map.TryGetValue(device, out var set))
                map.Add(device, set = []);

            set.Add(block);
        }
    }

    // Streams that must stay may exceed a limit by themselves; nothing may be added then.
    private void CheckLimit(DeviceFacts device, HashSet<Point>? blocks, int? limit, string verb, Func<Point, bool> stays)
    {
        if (limit is not { } most || blocks is null)
            return;

        var allowed = Math.Max(Math.Max(0, most - facts.Options.Headroom), blocks.Count(stays));
        if (blocks.Count > allowed)
            Report($"{device.Model.Id} {verb} {blocks.Count} streams where {allowed} are allowed.");
    }

    private void CheckLinks()
    {
        var loads = new SortedDictionary<(Id<Link> Link, bool IsForward), (long Load, bool IsNew)>();
        var trees = new List<HashSet<Id<Link>>>();
        foreach (var stream in result.Patch.Streams)
        {
            var loaded = Loaded(stream);
            trees.Add(loaded.Select(step => step.Link).ToHashSet());
            var network = rig.Rig.Networks.FirstOrDefault(candidate => candidate.Id == stream.Network);
            var before = Stays(stream) ? facts.Input.Patch.Streams.Where(old => old.Id == stream.Id).SelectMany(Loaded).ToHashSet() : [];
            foreach (var step in network is null ? [] : loaded)
            {
                var (load, isNew) = loads.GetValueOrDefault(step);
                loads[step] = (
                    load + facts.Networks.BitsPerSecond(network!, stream.From.Width, rig.Device(stream.From.Device)),
                    isNew || !before.Contains(step)
                );
            }
        }

        // Streams that must stay may take more than the share by themselves; nothing may be added then.
        foreach (var ((id, isForward), (load, isNew)) in loads)
        {
            var link = rig.Rig.Links.First(link => link.Id == id);
            if (isNew && link.SpeedMbps is { } speed && (double)load / speed > facts.Options.LinkPercent * 10_000)
            {
                var (from, to) = isForward ? (link.From.Device, link.To.Device) : (link.To.Device, link.From.Device);
                Report(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The link {id} would carry {load / 1000} kbit/s from {from} to {to}, more than {facts.Options.LinkPercent} % of its {speed} Mbit/s."
                    )
                );
            }
        }

        foreach (var (one, other, by) in PlacementRules.Separated(facts))
        {
            if (by == SeparationBy.Link && Links(one).Overlaps(Links(other)))
                Report($"{one.Key} and {other.Key} share a link and must not.");
        }

        HashSet<Id<Link>> Links(DemandFacts demand) =>
            deliveries.Where(delivery => delivery.Demand == demand && delivery.Stream >= 0).SelectMany(delivery => trees[delivery.Stream]).ToHashSet();
    }
}
