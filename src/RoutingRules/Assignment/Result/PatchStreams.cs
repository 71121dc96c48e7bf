using System.Globalization;
using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Writes the streams of a wiring; those of the input that still hold keep their text.</summary>
internal sealed class PatchStreams(AssignmentProblem problem, WiringPlan wiring)
{
    /// <summary>Streams of the input that are gone, in document order.</summary>
    public List<Id<AudioStream>> Removed { get; } = [];

    public ValueList<AudioStream> Write()
    {
        var result = new List<AudioStream>();
        var written = new HashSet<int>();
        foreach (var stream in problem.Show.Streams)
        {
            var block = stream.From.IsNone ? -1 : problem.TransmitBlockOf[stream.From.Value];
            var isWhole =
                block >= 0 && problem.TransmitBlocks[block].First == stream.From.Value && problem.TransmitBlocks[block].Width == stream.Model.From.Width;
            if (block >= 0 && problem.TransmitBlocks[block].IsKept)
            {
                result.Add(stream.Model with { To = AddReceivers(problem.TransmitBlocks[block], stream) });
            }
            else if (isWhole && Array.IndexOf(wiring.UsedTransmit, block) >= 0 && written.Add(block))
            {
                result.Add(Stream(problem.TransmitBlocks[block], stream.Model, stream));
            }
            else if (stream.State != ConnectionState.Connected)
            {
                result.Add(stream.Model);
            }
            else
            {
                Removed.Add(stream.Model.Id);
            }
        }

        foreach (var id in wiring.UsedTransmit)
        {
            var block = problem.TransmitBlocks[id];
            if (!block.IsCarrier && !written.Contains(id))
            {
                result.Add(
                    Stream(
                        block,
                        new AudioStream
                        {
                            Id = NewId(block, result),
                            Network = default,
                            From = problem.Show.Graph.Address(new(block.First), block.Width),
                        }
                    )
                );
            }
        }

        return result.ToValueList();
    }

    private Id<AudioStream> NewId(TransmitBlock block, List<AudioStream> streams)
    {
        var first = problem.Show.Graph.Address(new PointIndex(block.First));
        var name = string.Create(CultureInfo.InvariantCulture, $"{first.Device}-{((first.Number - 1) / block.Width) + 1}");
        var isOnlyGroup = problem.Show.Graph.Device(first.Device)!.Groups.Count(group => group.Kind == PortKind.Transmit && !group.IsCarrier) == 1;
        name = isOnlyGroup ? name : string.Create(CultureInfo.InvariantCulture, $"{first.Device}-{first.Group}-{((first.Number - 1) / block.Width) + 1}");
        name = name.Length > AddressParser.MaxIdLength ? string.Create(CultureInfo.InvariantCulture, $"stream-{block.Id + 1}") : name;
        var id = name;
        for (var n = 2; streams.Any(stream => stream.Id.Value == id) || problem.Show.Document.Patch.Streams.Any(stream => stream.Id.Value == id); n++)
        {
            id = string.Create(CultureInfo.InvariantCulture, $"{name}.{n}");
        }

        return new(id);
    }

    private AudioStream Stream(TransmitBlock block, AudioStream model, StreamNode? old = null)
    {
        var network = NetworkOf(block);
        return model with { Network = network < 0 ? model.Network : problem.Show.Document.Rig.Networks[network].Id, To = Receivers(block, old) };
    }

    /// <summary>The network on which demands take a block; -1 when none does.</summary>
    private int NetworkOf(TransmitBlock block)
    {
        var taker = Array.Find(problem.ReceiveBlocks, receiver => Takes(receiver.Id, block) && !block.Bystanders.Contains(receiver.Id));
        return taker is null ? -1 : problem.NetworkFrom(block.Device, taker.Device);
    }

    private bool Takes(int receiveBlock, TransmitBlock block) =>
        wiring.ReceiveStart[receiveBlock] >= block.First && wiring.ReceiveStart[receiveBlock] < block.First + block.Width;

    private ValueList<StreamReceiver> AddReceivers(TransmitBlock block, StreamNode stream) => stream.Model.To.Concat(Receivers(block, null)).ToValueList();

    /// <summary>Receivers of the input that take what they took as they are written there, then the others run by run.</summary>
    private ValueList<StreamReceiver> Receivers(TransmitBlock block, StreamNode? old)
    {
        var receivers = new List<StreamReceiver>();
        var written = new HashSet<int>();
        foreach (var receiver in old?.Receivers ?? default)
        {
            if (Standing(block, receiver) is { } standing && !standing.Exists(written.Contains))
            {
                receivers.Add(receiver.Model);
                written.UnionWith(standing);
            }
        }

        for (var i = 0; i < problem.ReceiveBlocks.Length; i++)
        {
            var first = problem.ReceiveBlocks[i];
            var start = wiring.ReceiveStart[i];
            if (!Takes(i, block) || written.Contains(i))
            {
                continue;
            }

            var width = first.Width;
            while (
                i + 1 < problem.ReceiveBlocks.Length
                && !written.Contains(i + 1)
                && problem.ReceiveBlocks[i + 1].First == first.First + width
                && problem.ReceiveBlocks[i + 1].PortGroup == first.PortGroup
                && wiring.ReceiveStart[i + 1] == start + width
                && start + width < block.First + block.Width
            )
            {
                width += problem.ReceiveBlocks[++i].Width;
            }

            var at = problem.Show.Graph.Address(new PointIndex(first.First), width);
            receivers.Add(
                new StreamReceiver { At = at, Channels = width == block.Width ? null : new NumberRange(start - block.First + 1, start - block.First + width) }
            );
        }

        return receivers.ToValueList();
    }

    /// <summary>The receive blocks of a receiver of the input if each of them takes the same slots now; else null.</summary>
    private List<int>? Standing(TransmitBlock block, ReceiverNode receiver)
    {
        var blocks = new List<int>();
        var end = receiver.At.Value + receiver.Model.At.Width;
        for (var slot = receiver.At.Value; slot >= 0 && slot < end; )
        {
            var id = problem.ReceiveBlockOf[slot];
            if (
                id < 0
                || problem.ReceiveBlocks[id].First != slot
                || slot + problem.ReceiveBlocks[id].Width > end
                || wiring.ReceiveStart[id] != block.First + receiver.FirstChannel - 1 + slot - receiver.At.Value
            )
            {
                return null;
            }

            blocks.Add(id);
            slot += problem.ReceiveBlocks[id].Width;
        }

        return blocks.Count == 0 ? null : blocks;
    }
}
