using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports receive slots that two receivers claim.</summary>
/// <remarks>One finding for each run of slots and two streams; entities are the slots and the streams in ordinal order.</remarks>
public sealed class ReceiveBlocksOverlap : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4002",
            Name = "receive-blocks-overlap",
            Title = "Two streams at the same receive slots",
            Family = RuleFamily.Streams,
            Severity = Severity.Error,
            Checks = "Every receive slot takes from one stream at most.",
            Why = "A slot plays one stream; nothing is summed, so the other one is silent there without anybody being told.",
            Remedy = "Move one of the receivers to free slots, or take it out.",
            Source = "AMWA IS-08 v1.0.1, Behaviour, The Active Map; IEEE 1722.1-2021, clause 7.2.19 (from memory)",
            Fixability = Fixability.Unsafe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        foreach (var stream in context.Streams)
        {
            context.LookedAt(stream.Receivers.Count);
        }

        var conflicts = new List<SinkConflict>();
        foreach (var conflict in context.Conflicts)
        {
            if (conflict.FirstKind == HopKind.Stream && conflict.OtherKind == HopKind.Stream)
            {
                conflicts.Add(conflict);
            }
        }

        // By stream, then by slot: a slot that a third receiver of the same stream claims once more is the same finding.
        conflicts.Sort(
            static (x, y) =>
                x.OtherIndex != y.OtherIndex ? x.OtherIndex - y.OtherIndex
                : x.FirstIndex != y.FirstIndex ? x.FirstIndex - y.FirstIndex
                : x.Sink != y.Sink ? x.Sink.CompareTo(y.Sink)
                : x.OtherReceiver - y.OtherReceiver
        );
        for (var start = 0; start < conflicts.Count; )
        {
            var end = start + 1;
            while (end < conflicts.Count && IsNext(context, conflicts[end - 1], conflicts[end]))
            {
                end++;
            }

            Report(context, conflicts[start], conflicts[end - 1].Sink);
            start = end;
        }
    }

    private static bool IsNext(RuleContext context, SinkConflict last, SinkConflict next) =>
        next.OtherIndex == last.OtherIndex
        && next.FirstIndex == last.FirstIndex
        && (next.Sink == last.Sink || next.Sink == last.Sink + 1)
        && context.DeviceOf(next.Sink) == context.DeviceOf(last.Sink)
        && context.GroupOf(next.Sink) == context.GroupOf(last.Sink);

    private static void Report(RuleContext context, SinkConflict conflict, PointIndex last)
    {
        var slots = context.Address(conflict.Sink, last.Value - conflict.Sink.Value + 1);
        var first = context.Streams[conflict.FirstIndex].Model.Id;
        var other = context.Streams[conflict.OtherIndex].Model.Id;
        var message =
            conflict.FirstIndex == conflict.OtherIndex
                ? $"Two receivers of stream '{first}' claim {slots}; the first one counts."
                : $"Streams '{first}' and '{other}' both claim {slots}; '{first}' counts and '{other}' is not heard there.";
        var (low, high) = first.CompareTo(other) <= 0 ? (first, other) : (other, first);
        context.Report(
            message,
            $"/patch/streams/{conflict.OtherIndex}/to/{conflict.OtherReceiver}",
            Entity.Of("slots", slots),
            Entity.Of("stream", low),
            Entity.Of("stream", high)
        );
    }
}
