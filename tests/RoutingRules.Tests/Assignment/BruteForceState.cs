using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Verification;

namespace RoutingRules.Tests.Assignment;

/// <summary>A wiring in the making: what slots carry, what blocks listen to, what is routed inside devices.</summary>
internal sealed class BruteForceState
{
    private List<Point> rewrittenSlots = [];
    private List<Point> rewrittenBlocks = [];

    /// <summary>What transmit slots carry; null for a slot that must stay empty.</summary>
    public Dictionary<Point, Point?> Contents { get; private set; } = [];

    /// <summary>For the first slot of each receive block the first transmit slot it takes.</summary>
    public Dictionary<Point, Point> Listens { get; private set; } = [];

    /// <summary>Routes to outputs, channels and the like; null for a sink whose block is routed from beyond the last source.</summary>
    public Dictionary<Point, Point?> Routes { get; private set; } = [];

    /// <summary>By how much the numbers of sources lie after those of their sinks, where a device has to keep that the same for all blocks.</summary>
    public Dictionary<(Id<Device> Device, Id<PortGroup> From, Id<PortGroup> To), int> Distances { get; private set; } = [];

    /// <summary>The run of sources and the run of sinks being wired.</summary>
    public (PointRange From, PointRange To) Way { get; set; }

    /// <summary>The transmit block of the last connection.</summary>
    public Point LastBlock { get; set; }

    /// <summary>The state that streams which must stay leave.</summary>
    public static BruteForceState Of(AssignmentFacts facts)
    {
        var state = new BruteForceState();
        foreach (var stream in facts.StayingStreams)
        {
            for (var i = 0; i < stream.From.Width; i++)
                state.Contents[stream.From[i]] = facts.Before.Source(stream.From[i]);

            foreach (
                var (at, from) in facts
                    .Before.Listening()
                    .Where(pair => VectorCount.FirstOfBlock(facts.Rig, pair.From) == VectorCount.FirstOfBlock(facts.Rig, stream.From[0]))
            )
            {
                if (
                    VectorCount.FirstOfBlock(facts.Rig, at) == at
                    && stream.To.Any(receiver =>
                        receiver.At.Device == at.Device && receiver.At.Group == at.Group && receiver.At.First <= at.Number && at.Number <= receiver.At.Last
                    )
                )
                    state.Listens[at] = from;
            }
        }

        return state;
    }

    /// <summary>Routes a sink inside its device, with all that moves with it; false when any of it is taken otherwise.</summary>
    public bool TryRoute(RigFacts rig, Point sink, Point source)
    {
        if (BruteForceBlocks.Entry(rig, source, sink) is { Reordering: false } entry)
        {
            var distance = source.Number - sink.Number;
            if (!Distances.TryAdd((sink.Device, entry.From, entry.To), distance) && Distances[(sink.Device, entry.From, entry.To)] != distance)
                return false;
        }

        var taken = rig.Kind(sink) == PortKind.Transmit ? Contents : Routes;
        return BruteForceBlocks.Together(rig, source, sink).All(pair => taken.TryAdd(pair.To, pair.From) || taken[pair.To] == pair.From);
    }

    /// <summary>Says that a sink is routed whether or not its block is sent; false when it takes something else.</summary>
    public bool TryWrite(Point sink, Point source) => Routes.TryAdd(sink, source) || Routes[sink] == source;

    /// <summary>Lets a receive slot hear a source through a transmit slot; false when either is taken otherwise.</summary>
    public bool TryConnect(RigFacts rig, Point transmit, Point receive, Point source)
    {
        var block = VectorCount.FirstOfBlock(rig, receive);
        var from = new Point(transmit.Device, transmit.Group, transmit.Number - (receive.Number - block.Number));
        if (!Listens.TryAdd(block, from) && Listens[block] != from)
            return false;

        return TryRoute(rig, transmit, source);
    }

    /// <summary>Remembers a connection of a demand that stays where it was.</summary>
    public void Note(Point transmit, Point receive)
    {
        rewrittenSlots.Add(transmit);
        rewrittenBlocks.Add(receive);
    }

    /// <summary>What to return to with <see cref="Restore"/>.</summary>
    public BruteForceState Mark()
    {
        var copy = (BruteForceState)MemberwiseClone();
        (copy.Contents, copy.Listens, copy.Routes, copy.Distances) = (new(Contents), new(Listens), new(Routes), new(Distances));
        (copy.rewrittenSlots, copy.rewrittenBlocks) = ([.. rewrittenSlots], [.. rewrittenBlocks]);
        return copy;
    }

    public void Restore(BruteForceState mark) =>
        (Contents, Listens, Routes, Distances, rewrittenSlots, rewrittenBlocks, LastBlock) = (
            mark.Contents,
            mark.Listens,
            mark.Routes,
            mark.Distances,
            mark.rewrittenSlots,
            mark.rewrittenBlocks,
            mark.LastBlock
        );

    /// <summary>Slots and blocks under unmoved demands that differ from the input, so far.</summary>
    public int Rewritten(AssignmentFacts facts)
    {
        var slots = rewrittenSlots.Distinct().Count(slot => facts.Before.Source(slot) != Contents[slot]);
        var blocks = rewrittenBlocks
            .Select(slot => VectorCount.FirstOfBlock(facts.Rig, slot))
            .Distinct()
            .Count(block =>
                VectorCount
                    .Block(facts.Rig, block)
                    .Select((slot, i) => facts.Before.Listens(slot)?.From != new Point(Listens[block].Device, Listens[block].Group, Listens[block].Number + i))
                    .Any(differs => differs)
            );
        return slots + blocks;
    }

    /// <summary>Transmit and receive blocks in use, so far.</summary>
    public (int Transmit, int Receive) Blocks(RigFacts rig)
    {
        var used = Listens.Where(pair => !rig.IsExcluded(pair.Key) && !rig.IsExcluded(pair.Value)).ToList();
        return (used.Select(pair => VectorCount.FirstOfBlock(rig, pair.Value)).Distinct().Count(), used.Count);
    }

    /// <summary>True when a device that demands name sends or takes more streams than it may, those that must stay apart.</summary>
    public bool ExceedsLimit(AssignmentFacts facts)
    {
        if (facts.StayingStreams.Count > 0)
            return false;

        var used = Listens.Select(pair => (To: pair.Key.Device, From: VectorCount.FirstOfBlock(facts.Rig, pair.Value))).Distinct().ToList();
        return used.GroupBy(pair => pair.To).Any(group => Exceeds(facts, group.Key, group.Count(), limits => limits.StreamsReceived))
            || used.Select(pair => pair.From)
                .Distinct()
                .GroupBy(block => block.Device)
                .Any(group => Exceeds(facts, group.Key, group.Count(), limits => limits.StreamsSent));
    }

    private static bool Exceeds(AssignmentFacts facts, Id<Device> device, int count, Func<ProfileLimits, int?> limit) =>
        facts.Rig.Device(device)!.Profile!.Limits is { } limits && limit(limits) is { } most && count > Math.Max(0, most - facts.Options.Headroom);

    /// <summary>False when an output that cannot be silenced would sound what no demand placed there. Only a quick look; the verifier decides.</summary>
    public bool IsQuiet(AssignmentFacts facts, HashSet<Point> places)
    {
        foreach (var group in Listens.Keys.Select(key => key.Device).Distinct().SelectMany(id => facts.Rig.Device(id)!.Groups))
        {
            if (!group.IsRigid || group.Kind != PortKind.Output || group.FixedFrom!.Kind != PortKind.Receive)
                continue;

            foreach (var point in Enumerable.Range(1, Math.Min(group.Count, group.FixedFrom.Count)).Select(group.At))
            {
                var slot = group.FixedFrom.At(point.Number);
                var block = VectorCount.FirstOfBlock(facts.Rig, slot);
                if (places.Contains(point) || !facts.Rig.IsUsable(point) || facts.Rig.IsExcluded(point) || !Listens.TryGetValue(block, out var from))
                    continue;

                var heard = new Point(from.Device, from.Group, from.Number + slot.Number - block.Number);
                if (facts.Rig.Group(heard) is { IsRigid: false } && Contents.GetValueOrDefault(heard) is { } source && facts.Before.Source(point) != source)
                    return false;
            }
        }

        return true;
    }
}
