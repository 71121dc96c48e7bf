using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports devices that send or receive more streams than they can.</summary>
/// <remarks>One finding for each device and direction; the entity is the device as sender or as receiver.</remarks>
public sealed class StreamLimitExceeded : Rule<DeviceNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4003",
            Name = "stream-limit-exceeded",
            Title = "Too many streams at a device",
            Family = RuleFamily.Streams,
            Severity = Severity.Error,
            Checks = "A device sends no more transmit blocks, and receives no more different streams, than its profile allows.",
            Why = "The device refuses the streams beyond its limit, and which ones it refuses depends on the order they start in.",
            Remedy = "Put more sources into one stream, drop a stream, or move a destination to another device.",
            Source = "the device's profile; common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, DeviceNode subject)
    {
        var streams = context.Shared(static asking => Count(asking));
        Compare(context, subject, "sender", "sends", "send", streams.Sent[subject.Index], subject.Profile.Limits?.StreamsSent);
        Compare(context, subject, "receiver", "receives", "receive", streams.Received[subject.Index], subject.Profile.Limits?.StreamsReceived);
    }

    private static StreamsOf Count(RuleContext context)
    {
        var sent = new List<string>?[context.Devices.Count];
        var received = new List<string>?[context.Devices.Count];
        var blocks = new HashSet<(int Device, int Group, int Block)>(context.Streams.Count);
        foreach (var stream in context.Streams)
        {
            if (stream.State != ConnectionState.Connected)
            {
                continue;
            }

            var sender = context.DeviceOf(stream.From);
            var group = context.GroupOf(stream.From);
            if (blocks.Add((sender.Index, group.Index, (context.NumberOf(stream.From) - 1) / group.BlockSize)))
            {
                (sent[sender.Index] ??= []).Add(stream.Model.Id.Value);
            }

            AddReceived(context, stream, received);
        }

        return new StreamsOf(sent, received);
    }

    private static void AddReceived(RuleContext context, StreamNode stream, List<string>?[] received)
    {
        for (var i = 0; i < stream.Receivers.Count; i++)
        {
            if (
                stream.Receivers[i].State == ConnectionState.Connected
                && context.DeviceOf(stream.Receivers[i].At) is var device
                && !IsCounted(context, stream, i, device)
            )
            {
                (received[device.Index] ??= []).Add(stream.Model.Id.Value);
            }
        }
    }

    private static bool IsCounted(RuleContext context, StreamNode stream, int before, DeviceNode device)
    {
        for (var i = 0; i < before; i++)
        {
            if (stream.Receivers[i].State == ConnectionState.Connected && context.DeviceOf(stream.Receivers[i].At) == device)
            {
                return true;
            }
        }

        return false;
    }

    private static void Compare(RuleContext context, DeviceNode device, string role, string does, string can, List<string>? streams, int? limit)
    {
        context.LookedAt(streams is not null && limit is not null ? 1 : 0);
        if (streams is not null && streams.Count > limit)
        {
            var unit = streams.Count == 1 ? "stream" : "streams";
            context.Report(
                string.Create(CultureInfo.InvariantCulture, $"{device.Id} {does} {streams.Count} {unit} but can {can} {limit}: {Wording.List(streams)}."),
                $"/rig/devices/{device.Index}",
                [Entity.Of(role, device.Id), .. streams.ConvertAll(stream => Entity.Of("stream", stream))]
            );
        }
    }

    /// <summary>For each device the streams it sends and receives.</summary>
    private sealed record StreamsOf(List<string>?[] Sent, List<string>?[] Received);
}
