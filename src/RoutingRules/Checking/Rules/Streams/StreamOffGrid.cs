using System.Globalization;
using RoutingRules.Checking.Facts.Streams;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports streams and receivers that are not whole blocks of their port groups.</summary>
/// <remarks>One finding for the sender and one for each receiver; entities are the stream, the slots and, where they are at fault, the channels.</remarks>
public sealed class StreamOffGrid : Rule<StreamNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4001",
            Name = "stream-off-grid",
            Title = "Stream off the block grid",
            Family = RuleFamily.Streams,
            Severity = Severity.Error,
            Checks = "A stream is one whole block of transmit slots; a receiver takes whole blocks of receive slots and whole blocks of stream channels.",
            Why = "Devices send and take slots in blocks that stand on a fixed grid; anything else cannot be set on them.",
            Remedy = "Move the slots to whole blocks: with blocks of 4 that is 1-4, 5-8, 9-12 and so on.",
            Source = "common practice, no source; aligned whole blocks as in AMWA IS-08 v1.0.1, Behaviour, Channel Block Sizes",
            Fixability = Fixability.Manual,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, StreamNode subject)
    {
        var isSenderSound = subject.State != ConnectionState.Connected || StreamGrid.IsOnGrid(context, subject);
        if (!isSenderSound)
        {
            context.Report(
                $"Stream '{subject.Model.Id}' is sent from {subject.Model.From}, which is not one whole block{Blocks(context.GroupOf(subject.From))}.",
                $"/patch/streams/{subject.Index}/from",
                Entity.Of("stream", subject.Model.Id),
                Entity.Of("from", subject.Model.From)
            );
        }

        foreach (var receiver in subject.Receivers)
        {
            if (receiver.State == ConnectionState.Connected && !IsRepeated(subject, receiver))
            {
                CheckReceiver(context, subject, receiver, isSenderSound);
            }
        }
    }

    private static void CheckReceiver(RuleContext context, StreamNode stream, ReceiverNode receiver, bool isSenderSound)
    {
        var group = context.GroupOf(receiver.At);
        var at = receiver.Model.At;

        if (isSenderSound && stream.Model.From.Width % group.BlockSize != 0)
        {
            // The block sizes do not fit each other at all: another rule says so.
            return;
        }

        // A receiver of all channels is as wide as its sender, so a sender of a wrong width is not told again here.
        var width = isSenderSound || receiver.Model.Channels is not null ? at.Width : group.BlockSize;
        if (!StreamGrid.IsWhole(group, at.First, width))
        {
            context.Report(
                $"Stream '{stream.Model.Id}' is received at {at}, which is not whole blocks{Blocks(group)}.",
                $"/patch/streams/{stream.Index}/to/{receiver.Index}/at",
                Entity.Of("stream", stream.Model.Id),
                Entity.Of("at", at)
            );
        }
        else if ((receiver.FirstChannel - 1) % group.BlockSize != 0)
        {
            context.Report(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"At {at} stream '{stream.Model.Id}' is taken from channel {receiver.FirstChannel} on, "
                        + $"but blocks of {group.BlockSize} start at channels 1, {group.BlockSize + 1} and so on."
                ),
                $"/patch/streams/{stream.Index}/to/{receiver.Index}/channels",
                Entity.Of("stream", stream.Model.Id),
                Entity.Of("at", at),
                Entity.Of("channels", receiver.Model.Channels.GetValueOrDefault().ToString())
            );
        }
    }

    private static bool IsRepeated(StreamNode stream, ReceiverNode receiver)
    {
        for (var earlier = 0; earlier < receiver.Index; earlier++)
        {
            var other = stream.Receivers[earlier];
            if (other.At == receiver.At && other.Model.At.Width == receiver.Model.At.Width && other.FirstChannel == receiver.FirstChannel)
            {
                return true;
            }
        }

        return false;
    }

    private static string Blocks(GroupNode group) =>
        group.BlockSize == 1
            ? ": its slots travel one by one"
            : string.Create(
                CultureInfo.InvariantCulture,
                $" of {group.BlockSize}: blocks start at 1, {group.BlockSize + 1} and so on, and the last one ends at {group.BlockCount * group.BlockSize}"
            );
}
