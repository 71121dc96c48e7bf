using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Contents of transmit slots, what receive blocks take, and what that costs.</summary>
internal sealed partial class WiringModel
{
    private const int MostContents = 400_000;

    private readonly AssignmentPart part;
    private readonly PlacementModel placements;
    private readonly CpModel model;
    private readonly BoolVar always;
    private readonly Dictionary<(int Slot, int Source), BoolVar?> carries = [];
    private readonly SortedDictionary<int, List<(int Source, BoolVar Variable)>> contents = [];
    private readonly ReceiveClass?[] classOf;
    private readonly SortedDictionary<int, List<ReceiveClass>> classes = [];
    private readonly Dictionary<(int Receiver, int Sender), SortedDictionary<int, List<IntVar>>> wanted = [];

    public WiringModel(AssignmentPart part, PlacementModel placements)
    {
        this.part = part;
        this.placements = placements;
        model = placements.Model;
        always = model.NewBoolVar("");
        model.AddBoolAnd([always]);
        classOf = new ReceiveClass?[part.ReceiveBlocks.Count];
        AddReceivers();
        AddFixedDeliveries();
        CountSettled();
        AddSlotSinks();
        AddNeeds();
        AddSilence();
        AddTransmitBlocks();
        AddStreamLimits();
        AddCuts();
        AddBystanders();
        AddLinkRoom();
        AddLinkSeparations();
        foreach (var list in contents.Values)
        {
            model.AddAtMostOne(list.Select(entry => entry.Variable));
        }
    }

    /// <summary>Every delivery over the network with the demand and candidate that ask for it.</summary>
    private IEnumerable<(int Demand, PartCandidate Candidate, BoolVar Chosen, PartDelivery Delivery)> Deliveries()
    {
        for (var demand = 0; demand < part.Demands.Count; demand++)
        {
            for (var index = 0; index < part.Demands[demand].Candidates.Count; index++)
            {
                var candidate = part.Demands[demand].Candidates[index];
                foreach (var delivery in candidate.Deliveries)
                {
                    if (!delivery.IsLocal)
                    {
                        yield return (demand, candidate, placements.Chosen[demand][index], delivery);
                    }
                }
            }
        }
    }

    /// <summary>Whether a slot carries a source: a variable, the constant truth, or null when it never does.</summary>
    private BoolVar? Carries(int slot, int source)
    {
        if (carries.TryGetValue((slot, source), out var known))
        {
            return known;
        }

        if (slot == source)
        {
            return Carries(slot, Real(source));
        }

        BoolVar? variable = null;
        var settled = part.ContentOf(new PointIndex(slot));
        if (settled.IsSettled)
        {
            variable = settled.Content.Value == source && source >= 0 ? always : null;
            carries.Add((slot, source), variable);
            return variable;
        }

        var filling = part.Filling(new PointIndex(slot), new PointIndex(source));
        if (filling.Count == 0)
        {
            carries.Add((slot, source), null);
            return null;
        }

        variable = model.NewBoolVar("");
        foreach (var (filled, with) in filling)
        {
            carries.Add((filled.Value, with.Value), variable);
            if (!contents.TryGetValue(filled.Value, out var list))
            {
                contents.Add(filled.Value, list = []);
            }

            list.Add((with.Value, variable));
        }

        return carries.Count <= MostContents ? variable : throw new UnsupportedAssignmentException("cp-sat", "shows as large as this one");
    }

    /// <summary>What a source carries: itself, or what is in it when it is a transmit slot.</summary>
    private int Real(int source)
    {
        if (part.TransmitBlockOf(new PointIndex(source)) < 0)
        {
            return source;
        }

        var content = part.Show.Graph.Upstream(new PointIndex(source)).Value;
        return content >= 0 ? content : throw new UnsupportedAssignmentException("cp-sat", "sources that are transmit slots without contents");
    }

    private void AddReceivers()
    {
        var sendersOf = new SortedDictionary<int, SortedSet<int>>();
        var staying = new HashSet<int>();
        var prescribed = new HashSet<int>();
        foreach (var (_, candidate, _, delivery) in Deliveries())
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

            if (!classes.TryGetValue(block.Device, out var list))
            {
                classes.Add(block.Device, list = []);
            }

            var isPlain = !prescribed.Contains(id) && IsPlain(block, staying.Contains(block.Device));
            if (isPlain && list.Find(other => other.IsPlain && other.Block.PortGroup == block.PortGroup) is { } alike)
            {
                alike.Count++;
                classOf[id] = alike;
                continue;
            }

            var added = new ReceiveClass { Block = block, IsPlain = isPlain };
            list.Add(added);
            classOf[id] = added;
            foreach (var sender in from)
            {
                foreach (var (transmit, transmitId) in blocksOf.GetValueOrDefault(sender, []))
                {
                    AddTakes(added, id, transmit, transmitId);
                }
            }
        }

        foreach (var receiver in classes.Values.SelectMany(list => list).Where(receiver => !receiver.Block.IsKept))
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
                receiver.Takes.Add(new Take(always, transmitId, block.InputStart.Value));
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

    private void Want(PartDelivery delivery, int source, IEnumerable<IntVar> variables)
    {
        if (!wanted.TryGetValue((delivery.Receiver, delivery.Sender), out var bySource))
        {
            wanted.Add((delivery.Receiver, delivery.Sender), bySource = []);
        }

        source = Real(source);
        if (!bySource.TryGetValue(source, out var list))
        {
            bySource.Add(source, list = []);
        }

        list.AddRange(variables);
    }
}
