using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports streams that nobody receives.</summary>
/// <remarks>One finding for each stream; a stream that is kept on purpose is left alone.</remarks>
public sealed class StreamWithoutReceiver : Rule<StreamNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4005",
            Name = "stream-without-receiver",
            Title = "Stream that nobody receives",
            Family = RuleFamily.Streams,
            Severity = Severity.Warning,
            Checks = "Every stream has a receiver, unless it is marked to be kept.",
            Why = "It takes one of the sender's streams and is most often a receiver that was forgotten.",
            Remedy = "Add the receiver, remove the stream, or mark it with keep when a device outside the document takes it.",
            Source = "common practice, no source",
            Fixability = Fixability.Safe,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, StreamNode subject)
    {
        context.LookedAt(subject.State == ConnectionState.Connected && !subject.Model.Keep ? 1 : 0);
        if (subject.State == ConnectionState.Connected && subject.Receivers.Count == 0 && !subject.Model.Keep)
        {
            context.Report(
                $"Nobody receives stream '{subject.Model.Id}' from {subject.Model.From}.",
                $"/patch/streams/{subject.Index}",
                Entity.Of("stream", subject.Model.Id)
            );
        }
    }
}
