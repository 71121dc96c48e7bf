using System.Globalization;
using RoutingRules.Checking.Facts.Streams;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Checking.Rules.Streams;

/// <summary>Reports receivers whose block size does not divide the width of the stream.</summary>
/// <remarks>One finding for each stream and port group of receive slots; entities are the stream and the group.</remarks>
public sealed class ReceiverWidthMismatch : Rule<StreamNode>
{
    /// <inheritdoc/>
    public override RuleDescriptor Descriptor { get; } =
        new()
        {
            Id = "RR4004",
            Name = "receiver-width-mismatch",
            Title = "Stream and receiver do not fit in blocks",
            Family = RuleFamily.Streams,
            Severity = Severity.Error,
            Checks = "The width of a stream is a whole number of the receiver's blocks.",
            Why = "A receiver that takes blocks of 8 cannot take a stream of 4, and one that takes blocks of 3 cannot take all of a stream of 8.",
            Remedy = "Send a stream of another width, or use receive slots with a block size that divides it.",
            Source = "common practice, no source",
            Fixability = Fixability.None,
        };

    /// <inheritdoc/>
    public override void Check(RuleContext context, StreamNode subject)
    {
        context.LookedAt(0);
        if (!StreamGrid.IsOnGrid(context, subject))
        {
            return;
        }

        var width = subject.Model.From.Width;
        var reported = new List<PointIndex>();
        foreach (var receiver in subject.Receivers)
        {
            if (receiver.State != ConnectionState.Connected)
            {
                continue;
            }

            context.LookedAt();
            var device = context.DeviceOf(receiver.At);
            var group = context.GroupOf(receiver.At);
            if (width % group.BlockSize != 0 && !reported.Contains(device.First(group)))
            {
                reported.Add(device.First(group));
                context.Report(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Stream '{subject.Model.Id}' has {width} {(width == 1 ? "channel" : "channels")}, but {device.Id}/{group.Id} "
                            + $"takes blocks of {group.BlockSize}: it cannot be received whole at {receiver.Model.At}."
                    ),
                    $"/patch/streams/{subject.Index}/to/{receiver.Index}",
                    Entity.Of("stream", subject.Model.Id),
                    Entity.Of("receiver", $"{device.Id}/{group.Id}")
                );
            }
        }
    }
}
