using RoutingRules.Checking.Facts;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports transmit slots that more than one stream sends.</summary>
/// <remarks>One finding for each run of streams that overlap; entities are the slots they cover together and the streams in ordinal order.</remarks>
public sealed class TransmitBlockSentTwice : Rule<ResolvedShow>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4007",
            Name = "transmit-block-sent-twice",
            Title = "Transmit slots sent by two streams",
            Family = RuleFamily.Streams,
            Severity = Severity.Error,
            Checks = "Every transmit slot is sent by one stream at most; one stream goes to as many receivers as needed.",
            Why = "A device has one stream for each block; the second one cannot be set up, and its receivers stay silent.",
            Remedy = "Keep one of the streams and list the receivers of both in it.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, ResolvedShow subject)
    {
        var streams = new List<StreamNode>();
        foreach (var stream in context.Streams)
        {
            if (stream.State == ConnectionState.Connected)
            {
                streams.Add(stream);
            }
        }

        context.LookedAt(streams.Count);
        streams.Sort(static (x, y) => x.From != y.From ? x.From.CompareTo(y.From) : x.Index - y.Index);
        for (var start = 0; start < streams.Count; )
        {
            var end = start + 1;
            var reach = streams[start].From + streams[start].Model.From.Width;
            while (end < streams.Count && streams[end].From < reach)
            {
                var next = streams[end].From + streams[end].Model.From.Width;
                reach = next > reach ? next : reach;
                end++;
            }

            if (end > start + 1)
            {
                Report(context, streams[start..end], reach);
            }

            start = end;
        }
    }

    private static void Report(RuleContext context, List<StreamNode> streams, PointIndex reach)
    {
        var slots = context.Address(streams[0].From, reach.Value - streams[0].From.Value);
        streams.Sort(static (x, y) => x.Index - y.Index);
        var message = streams.TrueForAll(stream => stream.Model.From == slots)
            ? $"Streams {Wording.List(streams.ConvertAll(stream => $"'{stream.Model.Id}'"))} send the same slots, {slots}."
            : "Streams " + $"{Wording.List([.. streams.GroupBy(stream => stream.Model.From).Select(Alike)])} " + "send some slots more than once.";
        var pointer = $"/patch/streams/{streams[1].Index}/from";
        streams.Sort(static (x, y) => x.Model.Id != y.Model.Id ? x.Model.Id.CompareTo(y.Model.Id) : x.Index - y.Index);
        context.Report(message, pointer, [Entity.Of("slots", slots), .. streams.ConvertAll(stream => Entity.Of("stream", stream.Model.Id))]);
    }

    private static string Alike(IGrouping<PointRange, StreamNode> same) => $"{Wording.List([.. same.Select(stream => $"'{stream.Model.Id}'")])} ({same.Key})";
}
