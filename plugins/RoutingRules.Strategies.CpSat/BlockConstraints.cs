using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Transmit blocks in use, their networks and the limits on streams.</summary>
internal sealed class BlockConstraints(AssignmentPart part, CpModel model, WiringVariables wiring)
{
    public void AddTransmitBlocks()
    {
        var takesOf = new SortedDictionary<int, List<(ReceiveClass Receiver, Take Take)>>();
        foreach (var receiver in wiring.Receivers)
        {
            foreach (var take in receiver.Takes)
            {
                if (!receiver.Block.IsKept && receiver.Block.CarrierFrom < 0)
                {
                    (takesOf.TryGetValue(take.Block, out var list) ? list : takesOf[take.Block] = []).Add((receiver, take));
                }
            }
        }

        foreach (var (id, takes) in takesOf)
        {
            var block = part.TransmitBlocks[id];
            if (!block.IsHeard)
            {
                wiring.Sent.Add(id, model.NewBoolVar(""));
                takes.ForEach(entry => model.AddImplication(entry.Take.Variable, wiring.Sent[id]));
            }

            var networks = new SortedDictionary<int, BoolVar>();
            foreach (var (receiver, take) in takes)
            {
                var network = part.NetworkBetween(block.Device, receiver.Block.Device);
                model.AddImplication(take.Variable, networks.TryGetValue(network, out var one) ? one : networks[network] = model.NewBoolVar(""));
                var key = (receiver.Block.Device, id);
                model.AddImplication(take.Variable, wiring.Received.TryGetValue(key, out var stream) ? stream : wiring.Received[key] = model.NewBoolVar(""));
            }

            model.AddAtMostOne(networks.Values);
        }

        AddOrderOfEqualBlocks(takesOf);
    }

    /// <summary>Transmit blocks that are alike are numbered by the first receiver that takes them: each is taken only once the one before it is.</summary>
    private void AddOrderOfEqualBlocks(SortedDictionary<int, List<(ReceiveClass Receiver, Take Take)>> takesOf)
    {
        var hasStaying = part.Demands.Any(demand => demand.Candidates.Any(candidate => candidate.IsExisting));
        var previous = new Dictionary<int, Dictionary<ReceiveClass, BoolVar>>();
        foreach (var id in wiring.Sent.Keys)
        {
            var block = part.TransmitBlocks[id];
            var isPlain = block is { IsKept: false, CarrierTo: < 0, Bystanders.Count: 0 };
            for (var slot = block.First; slot < block.First + block.Width; slot = slot.Add(1))
            {
                isPlain &=
                    part.Show.Graph.FixedSource(slot) is null
                    && !(hasStaying && part.Show.Graph.Upstream(slot).Value >= 0)
                    && wiring
                        .Contents.GetValueOrDefault(slot.Value, [])
                        .TrueForAll(entry =>
                            part.Filling(slot, new PointIndex(entry.Source)).Count == 1 && part.Filling(block.First, new PointIndex(entry.Source)).Count == 1
                        );
            }

            if (!isPlain)
            {
                continue;
            }

            var group = part.PortGroupOf(block.First);
            previous[group] = AddPrecedence(takesOf[id].ToLookup(entry => entry.Receiver, entry => entry.Take), previous.GetValueOrDefault(group));
        }
    }

    /// <summary>Lets receivers take a block only when an earlier one, or they themselves, take the block before it.</summary>
    /// <returns>For each receiver whether it or one before it takes the block.</returns>
    private Dictionary<ReceiveClass, BoolVar> AddPrecedence(ILookup<ReceiveClass, Take> takes, Dictionary<ReceiveClass, BoolVar>? before)
    {
        var taken = new Dictionary<ReceiveClass, BoolVar>();
        BoolVar? earlier = null;
        BoolVar? earlierBefore = null;
        foreach (var receiver in wiring.Receivers)
        {
            var sofar = model.NewBoolVar("");
            var any = new Total().Add(sofar).Add(takes[receiver].Select(take => take.Variable), -1);
            (earlier is null ? any : any.Add(earlier, -1)).AtMost(model, 0);
            var needed = receiver.Count > 1 ? before?[receiver] : earlierBefore;
            foreach (var take in before is null ? [] : takes[receiver])
            {
                new Total().Add(take.Variable).Add(needed is null ? [] : [needed], -1).AtMost(model, 0);
            }

            taken.Add(receiver, sofar);
            earlier = sofar;
            earlierBefore = before?[receiver];
        }

        return taken;
    }

    public void AddStreamLimits()
    {
        foreach (var group in wiring.Sent.GroupBy(entry => part.TransmitBlocks[entry.Key].Device))
        {
            var kept = part.TransmitBlocks.Count(block => block.Device == group.Key && block.IsHeard);
            new Total().Add(group.Select(entry => entry.Value)).AtMost(model, Math.Max(0, (long)part.SentLimit(group.Key) - kept));
        }

        foreach (var group in wiring.Received.GroupBy(entry => entry.Key.Receiver))
        {
            var kept = part
                .ReceiveBlocks.Where(block => block.Device == group.Key && block.IsKept && !block.InputStart.IsNone)
                .Select(block => part.TransmitBlockOf(block.InputStart))
                .Distinct()
                .ToArray();
            new Total()
                .Add(group.Where(entry => !kept.Contains(entry.Key.Block)).Select(entry => entry.Value))
                .AtMost(model, Math.Max(0, (long)part.ReceivedLimit(group.Key) - kept.Length));
        }
    }
}
