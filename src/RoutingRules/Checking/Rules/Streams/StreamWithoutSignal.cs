using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports streams of which no slot carries a real source.</summary>
/// <remarks>One finding for each stream that has a receiver.</remarks>
public sealed class StreamWithoutSignal : Rule<StreamNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4006",
            Name = "stream-without-signal",
            Title = "Stream carries no signal",
            Family = RuleFamily.Streams,
            Severity = Severity.Note,
            Checks = "At least one slot of every stream that is received carries a bus, an input or another real source.",
            Why = "It takes network load and one of the receiver's streams for silence.",
            Remedy = "Route something into its transmit slots, or remove the stream.",
            Source = "common practice, no source",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, StreamNode subject)
    {
        if (subject.State != ConnectionState.Connected || subject.Receivers.Count == 0)
        {
            context.LookedAt(0);
            return;
        }

        for (var position = 0; position < subject.Model.From.Width; position++)
        {
            // A loop is another fault: there the slot does carry something, though no real source.
            if (!context.Origin(subject.From + position).IsNone || context.IsLooping(subject.From + position))
            {
                return;
            }
        }

        context.Report(
            $"Stream '{subject.Model.Id}' carries no signal: nothing arrives at {subject.Model.From}.",
            $"/patch/streams/{subject.Index}/from",
            Entity.Of("stream", subject.Model.Id)
        );
    }
}
