using Google.OrTools.Sat;
using RoutingRules.Assignment;

namespace RoutingRules.Strategies.CpSat;

/// <summary>What receive blocks may take.</summary>
internal sealed class ReceiverModel(AssignmentPart part, CpModel model, WiringVariables wiring)
{
    public void AddReceivers()
    {
        var sendersOf = new SortedDictionary<int, SortedSet<int>>();
        var staying = new HashSet<int>();
        var prescribed = new HashSet<int>();
        foreach (var (_, candidate, _, delivery) in wiring.Deliveries())
        {
            if (!sendersOf.TryGetValue(delivery.Receiver, out var list))
            {
                sendersOf.Add(delivery.Receiver, list = []);
            }

            list.Add(delivery.Sender);
            for (var position = 0; position < delivery.Width; position++)
            {
                var slot = part.ReceiveSlotOf(delivery.Sink + position);
                prescribed.Add(slot.IsNone ? -1 : part.ReceiveBlockOf(slot));
            }

            if (candidate.IsExisting)
            {
                staying.Add(delivery.Receiver);
            }
        }

        var blocksOf = part
            .TransmitBlocks.Select((block, id) => (block, id))
            .GroupBy(pair => pair.block.Device)
            .ToDictionary(group => group.Key, group => group.ToArray());
        for (var id = 0; id < part.ReceiveBlocks.Count; id++)
        {
            var block = part.ReceiveBlocks[id];
            if (!sendersOf.TryGetValue(block.Device, out var from))
            {
                continue;
            }

            if (!wiring.Classes.TryGetValue(block.Device, out var list))
            {
                wiring.Classes.Add(block.Device, list = []);
            }

            var isPlain = !prescribed.Contains(id) && IsPlain(block, staying.Contains(block.Device));
            if (isPlain && list.Find(other => other.IsPlain && other.Block.PortGroup == block.PortGroup) is { } alike)
            {
                alike.Count++;
                wiring.ClassOf[id] = alike;
                continue;
            }

            var added = new ReceiveClass { Block = block, IsPlain = isPlain };
            list.Add(added);
            wiring.ClassOf[id] = added;
            foreach (var sender in from)
            {
                foreach (var (transmit, transmitId) in blocksOf.GetValueOrDefault(sender, []))
                {
                    AddTakes(added, id, transmit, transmitId);
                }
            }
        }

        foreach (var receiver in wiring.Receivers.Where(receiver => !receiver.Block.IsKept))
        {
            new Total().Add(receiver.Takes.Select(take => take.Variable)).AtMost(model, receiver.Count);
        }
    }

    /// <summary>
    /// True for a block that is as good as any other of its group: it feeds no output by itself, is not exposed, and nothing of the input speaks for it.
    /// </summary>
    private bool IsPlain(PartReceiveBlock block, bool hasStaying)
    {
        var isPlain = !block.IsKept && block.CarrierFrom < 0 && !(hasStaying && !block.InputStart.IsNone);
        for (var position = 0; position < block.Width; position++)
        {
            isPlain &= part.OutputsFedBy(block.First + position).Count == 0 && !part.IsExposed(block.First + position);
        }

        return isPlain;
    }

    private void AddTakes(ReceiveClass receiver, int id, PartTransmitBlock transmit, int transmitId)
    {
        var block = receiver.Block;
        if (block.IsKept)
        {
            if (!block.InputStart.IsNone && part.TransmitBlockOf(block.InputStart) == transmitId)
            {
                receiver.Takes.Add(new Take(wiring.Always, transmitId, block.InputStart.Value));
            }

            return;
        }

        var network = part.NetworkBetween(transmit.Device, block.Device);
        var fits =
            block.CarrierFrom >= 0
                ? transmit.CarrierTo == id
                : transmit.CarrierTo < 0 && transmit.Width % block.Width == 0 && network >= 0 && (!transmit.IsKept || transmit.KeptNetwork == network);
        for (var start = 0; fits && start + block.Width <= transmit.Width; start += block.Width)
        {
            receiver.Takes.Add(new Take(model.NewBoolVar(""), transmitId, transmit.First.Value + start));
        }
    }
}
