using Google.OrTools.Sat;
using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Strategies.CpSat;

/// <summary>The variables of a wiring: contents of transmit slots, what receive blocks take, and what of it is used or changes.</summary>
internal sealed class WiringVariables
{
    private const int MostContents = 400_000;

    private readonly AssignmentPart part;
    private readonly PlacementModel placements;
    private readonly CpModel model;
    private readonly Dictionary<(int Slot, int Source), BoolVar?> carries = [];

    public WiringVariables(AssignmentPart part, PlacementModel placements)
    {
        this.part = part;
        this.placements = placements;
        model = placements.Model;
        Always = model.NewBoolVar("");
        model.AddBoolAnd([Always]);
        ClassOf = new ReceiveClass?[part.ReceiveBlocks.Count];
    }

    /// <summary>The constant truth.</summary>
    public BoolVar Always { get; }

    /// <summary>For each slot the sources it may carry.</summary>
    public SortedDictionary<int, List<(int Source, BoolVar Variable)>> Contents { get; } = [];

    /// <summary>For each receive block its class; null where nothing is delivered to its device.</summary>
    public ReceiveClass?[] ClassOf { get; }

    /// <summary>Classes of receive blocks by device.</summary>
    public SortedDictionary<int, List<ReceiveClass>> Classes { get; } = [];

    public IEnumerable<ReceiveClass> Receivers => Classes.Values.SelectMany(list => list);

    /// <summary>For each receiver and sender the sources that may be wanted, each with what wants it.</summary>
    public Dictionary<(int Receiver, int Sender), SortedDictionary<int, List<IntVar>>> Wanted { get; } = [];

    /// <summary>Transmit slots and sinks under demands that stay: whether they take something else.</summary>
    public SortedDictionary<int, BoolVar> RewrittenPoints { get; } = [];

    public Dictionary<PartReceiveBlock, BoolVar> RewrittenBlocks { get; } = [];

    public List<(int Slot, int Source, BoolVar Used)> Uses { get; } = [];

    public Dictionary<(int Demand, int Block), BoolVar> StreamsUsed { get; } = [];

    /// <summary>For each sink the placements that put something there over the network.</summary>
    public SortedDictionary<int, List<(int Source, BoolVar Chosen)>> PlacedAt { get; } = [];

    /// <summary>Transmit blocks in use that would otherwise not be sent.</summary>
    public SortedDictionary<int, BoolVar> Sent { get; } = [];

    public SortedDictionary<(int Block, int Receiver), BoolVar> Bystanders { get; } = [];

    public SortedDictionary<(int Receiver, int Block), BoolVar> Received { get; } = [];

    /// <summary>Every delivery over the network with the demand and candidate that ask for it.</summary>
    public IEnumerable<(int Demand, PartCandidate Candidate, BoolVar Chosen, PartDelivery Delivery)> Deliveries()
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
    public BoolVar? Carries(int slot, int source)
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
            variable = settled.Content.Value == source && source >= 0 ? Always : null;
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
            if (!Contents.TryGetValue(filled.Value, out var list))
            {
                Contents.Add(filled.Value, list = []);
            }

            list.Add((with.Value, variable));
        }

        return carries.Count <= MostContents ? variable : throw new UnsupportedAssignmentException("cp-sat", "shows as large as this one");
    }

    /// <summary>What a source carries: itself, or what is in it when it is a transmit slot.</summary>
    public int Real(int source)
    {
        if (part.TransmitBlockOf(new PointIndex(source)) < 0)
        {
            return source;
        }

        var content = part.Show.Graph.Upstream(new PointIndex(source)).Value;
        return content >= 0 ? content : throw new UnsupportedAssignmentException("cp-sat", "sources that are transmit slots without Contents");
    }

    /// <summary>What a slot may carry that could have been left out, each with its variable.</summary>
    public List<(int Source, BoolVar Variable)> Carried(int slot)
    {
        var settled = part.ContentOf(new PointIndex(slot));
        return !settled.IsSettled ? Contents.GetValueOrDefault(slot, [])
            : settled.Content.IsNone || settled.IsForced ? []
            : [(settled.Content.Value, Always)];
    }

    public void Want(PartDelivery delivery, int source, IEnumerable<IntVar> variables)
    {
        if (!Wanted.TryGetValue((delivery.Receiver, delivery.Sender), out var bySource))
        {
            Wanted.Add((delivery.Receiver, delivery.Sender), bySource = []);
        }

        source = Real(source);
        if (!bySource.TryGetValue(source, out var list))
        {
            bySource.Add(source, list = []);
        }

        list.AddRange(variables);
    }

    public void Place(int sink, int source, BoolVar chosen)
    {
        if (!PlacedAt.TryGetValue(sink, out var list))
        {
            PlacedAt.Add(sink, list = []);
        }

        list.Add((Real(source), chosen));
    }

    public bool HasLinkSeparation(int demand) => part.Demands[demand].Separations.Any(separation => separation.By == SeparationBy.Link);

    public BoolVar StreamUsed(int demand, int block)
    {
        if (!StreamsUsed.TryGetValue((demand, block), out var variable))
        {
            StreamsUsed.Add((demand, block), variable = model.NewBoolVar(""));
        }

        return variable;
    }

    public BoolVar Rewritten(int point)
    {
        if (!RewrittenPoints.TryGetValue(point, out var variable))
        {
            RewrittenPoints.Add(point, variable = model.NewBoolVar(""));
        }

        return variable;
    }

    public BoolVar RewrittenBlock(PartReceiveBlock block)
    {
        if (!RewrittenBlocks.TryGetValue(block, out var variable))
        {
            RewrittenBlocks.Add(block, variable = model.NewBoolVar(""));
        }

        return variable;
    }
}
