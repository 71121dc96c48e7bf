using System.Globalization;
using RoutingRules.Checking.Facts;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports devices near their stream limit that could do with fewer streams.</summary>
/// <remarks>
/// One finding for each device and direction; entities are the device as sender or as receiver and the streams that could all be spared at once. It speaks only
/// where the remedy is at hand: the signals of
/// the poorly filled stream fit into the free slots of another stream that comes from the same slots' group and ends at the same place.
/// </remarks>
public sealed class StreamPoorlyFilled : Rule<ResolvedShow>
{
    private static readonly RuleOption FewPercent = new()
    {
        Name = "fewPercent",
        Doc = "A stream is poorly filled when at most so many percent of its slots carry signal.",
        Default = 25,
        Minimum = 1,
        Maximum = 99,
    };

    private static readonly RuleOption NearLimit = new()
    {
        Name = "nearLimit",
        Doc = "A device is near its limit when it can take at most so many further streams.",
        Default = 1,
        Minimum = 0,
        Maximum = 100,
        IsWhole = true,
    };

    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4008",
            Name = "stream-poorly-filled",
            Title = "Stream that carries little",
            Family = RuleFamily.Streams,
            Severity = Severity.Note,
            Checks = "A device that can take no further stream has none of which few slots carry signal and whose signals would fit into another.",
            Why = "The next late mix needs a stream that is not there, while one is spent on a signal or two.",
            Remedy = "Route those signals into free slots of the other stream and remove this one.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
            Options = [FewPercent, NearLimit],
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        if (context.Streams.Count < 2)
        {
            return;
        }

        // Most devices are far from their limit: the streams are listed only for those that are near it.
        var counts = new (int Sent, int Received)[context.Devices.Count];
        Visit(context, (_, device) => counts[device].Sent++, (_, device) => counts[device].Received++);

        List<StreamNode>?[]? sent = null;
        List<StreamNode>?[]? received = null;
        foreach (var device in context.Devices)
        {
            var (sends, receives) = counts[device.Index];
            context.LookedAt(
                (sends > 1 && device.Profile.Limits?.StreamsSent is not null ? 1 : 0)
                    + (receives > 1 && device.Profile.Limits?.StreamsReceived is not null ? 1 : 0)
            );
            if (IsNear(context, sends, device.Profile.Limits?.StreamsSent))
            {
                (sent ??= new List<StreamNode>?[counts.Length])[device.Index] = new List<StreamNode>(sends);
            }

            if (IsNear(context, receives, device.Profile.Limits?.StreamsReceived))
            {
                (received ??= new List<StreamNode>?[counts.Length])[device.Index] = new List<StreamNode>(receives);
            }
        }

        if (sent is null && received is null)
        {
            return;
        }

        Visit(context, (stream, device) => sent?[device]?.Add(stream), (stream, device) => received?[device]?.Add(stream));

        foreach (var device in context.Devices)
        {
            Check(context, device, true, sent?[device.Index], device.Profile.Limits?.StreamsSent);
            Check(context, device, false, received?[device.Index], device.Profile.Limits?.StreamsReceived);
        }
    }

    private static bool IsNear(RuleContext context, int count, int? limit) => count > 1 && limit is { } most && most - count <= context.WholeValue(NearLimit);

    /// <summary>Names for each stream the device that sends it and, each once, those that receive it, by position in the rig.</summary>
    private static void Visit(RuleContext context, Action<StreamNode, int> onSender, Action<StreamNode, int> onReceiver)
    {
        foreach (var stream in context.Streams)
        {
            if (stream.State == ConnectionState.Connected && stream.Receivers.Count > 0)
            {
                onSender(stream, context.DeviceOf(stream.From).Index);
                VisitReceivers(context, stream, onReceiver);
            }
        }
    }

    private static void VisitReceivers(RuleContext context, StreamNode stream, Action<StreamNode, int> onReceiver)
    {
        for (var i = 0; i < stream.Receivers.Count; i++)
        {
            var receiver = stream.Receivers[i];
            if (receiver.State == ConnectionState.Connected && context.DeviceOf(receiver.At) is var device && !IsNamed(context, stream, i, device))
            {
                onReceiver(stream, device.Index);
            }
        }
    }

    private static bool IsNamed(RuleContext context, StreamNode stream, int before, DeviceNode device)
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

    private static void Check(RuleContext context, DeviceNode device, bool isSender, List<StreamNode>? streams, int? limit)
    {
        if (limit is not { } most || streams?.Exists(stream => IsPoor(context, stream, Filled(context, stream))) != true)
        {
            return;
        }

        // The emptiest first and by name, so that the order of the document does not matter.
        var filled = streams.ToDictionary(stream => stream, stream => Filled(context, stream));
        var sorted = streams.OrderBy(stream => filled[stream]).ThenBy(stream => stream.Model.Id.Value, StringComparer.Ordinal).ToList();
        var spared = new List<(StreamNode Poor, int Signals, StreamNode Other, int Free)>();
        var fuller = new HashSet<StreamNode>();
        foreach (var poor in sorted)
        {
            var signals = filled[poor];
            if (!IsPoor(context, poor, signals) || fuller.Contains(poor) || IsFixed(context, poor))
            {
                continue;
            }

            var other = Enumerable
                .Reverse(sorted)
                .FirstOrDefault(stream =>
                    stream != poor
                    && !spared.Exists(pair => pair.Poor == stream)
                    && signals <= stream.Model.From.Width - filled[stream]
                    && IsAlike(context, poor, stream)
                );
            if (other is not null)
            {
                spared.Add((poor, signals, other, other.Model.From.Width - filled[other]));
                filled[other] += signals;
                fuller.Add(other);
            }
        }

        if (spared.Count > 0)
        {
            Report(context, device, isSender, streams.Count, most, spared);
        }
    }

    private static void Report(
        RuleContext context,
        DeviceNode device,
        bool isSender,
        int count,
        int most,
        List<(StreamNode Poor, int Signals, StreamNode Other, int Free)> spared
    )
    {
        var (poor, signals, other, free) = spared[0];
        var more =
            spared.Count == 1
                ? ""
                : $" The signals of {Wording.List(spared.Skip(1).Select(pair => $"'{pair.Poor.Model.Id}'").ToList())} would fit into others as well.";
        context.Report(
            string.Create(
                CultureInfo.InvariantCulture,
                $"{device.Id} {(isSender ? "sends" : "receives")} {count} of the {most} streams it can, but of stream '{poor.Model.Id}' only "
                    + $"{signals} of {poor.Model.From.Width} slots carry signal: they would fit into '{other.Model.Id}', which has {free} free.{more}"
            ),
            $"/patch/streams/{poor.Index}",
            [Entity.Of(isSender ? "sender" : "receiver", device.Id), .. spared.Select(pair => Entity.Of("stream", pair.Poor.Model.Id)).Distinct()]
        );
    }

    private static bool IsPoor(RuleContext context, StreamNode stream, int signals) =>
        signals > 0 && signals * 100 <= stream.Model.From.Width * context.Value(FewPercent);

    private static int Filled(RuleContext context, StreamNode stream)
    {
        var filled = 0;
        for (var position = 0; position < stream.Model.From.Width; position++)
        {
            filled += context.Origin(stream.From + position).IsNone && !context.IsLooping(stream.From + position) ? 0 : 1;
        }

        return filled;
    }

    /// <summary>True when the device decides which slots carry what, so that nothing can be moved by patching.</summary>
    private static bool IsFixed(RuleContext context, StreamNode stream)
    {
        for (var position = 0; position < stream.Model.From.Width; position++)
        {
            if (context.FixedSource(stream.From + position) is not null)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>True when two streams leave one port group on one network for the same devices, in whole.</summary>
    private static bool IsAlike(RuleContext context, StreamNode one, StreamNode other)
    {
        if (
            one.Model.Network != other.Model.Network
            || context.DeviceOf(one.From) != context.DeviceOf(other.From)
            || context.GroupOf(one.From) != context.GroupOf(other.From)
            || IsFixed(context, other)
        )
        {
            return false;
        }

        foreach (var receiver in one.Receivers)
        {
            var isThere = receiver.State == ConnectionState.Connected && ConsistsOfFree(context, receiver);
            for (var i = 0; isThere && i <= other.Receivers.Count; i++)
            {
                if (i == other.Receivers.Count)
                {
                    return false;
                }

                if (
                    other.Receivers[i] is { State: ConnectionState.Connected, Model.Channels: null } match
                    && context.DeviceOf(match.At) == context.DeviceOf(receiver.At)
                    && ConsistsOfFree(context, match)
                )
                {
                    break;
                }
            }

            if (!isThere)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>True when nothing is fixed to the slots of a receiver, so that its signals may arrive in other ones.</summary>
    private static bool ConsistsOfFree(RuleContext context, ReceiverNode receiver)
    {
        for (var position = 0; position < receiver.Model.At.Width; position++)
        {
            foreach (var fed in context.Fed(receiver.At + position))
            {
                if (context.FixedSource(new PointIndex(fed)) is not null)
                {
                    return false;
                }
            }
        }

        return true;
    }
}
