using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>One part of a show as a strategy sees it: demands, their candidates, and everything that limits how they can be wired. Read only.</summary>
/// <remarks>Devices are given by their position in <see cref="ResolvedShow.Devices"/>, blocks by their position in the lists here.</remarks>
public abstract class AssignmentPart
{
    private protected AssignmentPart() { }

    /// <summary>The whole show.</summary>
    public abstract ResolvedShow Show { get; }

    /// <summary>What was asked for.</summary>
    public abstract AssignmentOptions Options { get; }

    /// <summary>The order of the eight levels after the first six numbers.</summary>
    public abstract IReadOnlyList<ObjectiveLevel> Order { get; }

    /// <summary>Units of search work to spend at most, as far as the strategy counts such units.</summary>
    public abstract long Budget { get; }

    /// <summary>The demands of the part, in demand order.</summary>
    public abstract IReadOnlyList<PartDemand> Demands { get; }

    /// <summary>Every block that can be sent, of the whole show.</summary>
    public abstract IReadOnlyList<PartTransmitBlock> TransmitBlocks { get; }

    /// <summary>Every block that can be received, of the whole show.</summary>
    public abstract IReadOnlyList<PartReceiveBlock> ReceiveBlocks { get; }

    /// <summary>The block of a transmit slot; -1 for points that are no usable transmit slot.</summary>
    public abstract int TransmitBlockOf(PointIndex point);

    /// <summary>The block of a receive slot; -1 for points that are no usable receive slot.</summary>
    public abstract int ReceiveBlockOf(PointIndex point);

    /// <summary>What is settled about a transmit slot before anything is chosen.</summary>
    public abstract SlotContent ContentOf(PointIndex slot);

    /// <summary>
    /// The contents that come about together when a transmit slot is made to carry a source: the slot's own, and those of the whole block when the
    /// device routes in blocks. A slot that is itself the source goes on carrying what it carries. Empty when the slot cannot carry the source.
    /// </summary>
    public abstract IReadOnlyList<(PointIndex Slot, PointIndex Source)> Filling(PointIndex slot, PointIndex source);

    /// <summary>The receive slot that a sink is, or always takes when it is used at all; <see cref="PointIndex.None"/> when it is routed freely.</summary>
    public abstract PointIndex ReceiveSlotOf(PointIndex sink);

    /// <summary>Whether a sink can be routed freely from the slots of a receive block.</summary>
    public abstract bool CanTake(PointIndex sink, PartReceiveBlock block);

    /// <summary>Outputs that carry what a receive slot carries whenever its block is fed.</summary>
    public abstract IReadOnlyList<PointIndex> OutputsFedBy(PointIndex slot);

    /// <summary>
    /// For an output that <see cref="OutputsFedBy"/> names and that is routed in blocks: the outputs of its block, of which one must be used before the slot
    /// sounds at any. Empty for others.
    /// </summary>
    public abstract IReadOnlyList<PointIndex> RoutedTogether(PointIndex output);

    /// <summary>Whether an output that no demand uses must carry nothing.</summary>
    public abstract bool MustBeSilent(PointIndex output);

    /// <summary>The source that an output which no demand uses may go on carrying; <see cref="PointIndex.None"/> for none.</summary>
    public abstract PointIndex ToleratedAt(PointIndex output);

    /// <summary>Whether a point is dead, reserved or excluded.</summary>
    public abstract bool IsBarred(PointIndex point);

    /// <summary>Whether an output counts as a spare while nothing is placed there: it is not barred, and no line names it.</summary>
    public abstract bool IsSpare(PointIndex output);

    /// <summary>Whether a source is talkback, click or comms alone, so that it must not arrive at slots that are exposed.</summary>
    public abstract bool IsPrivate(PointIndex source);

    /// <summary>Whether a receive slot leads to loudspeakers by the routing that devices have without any patch.</summary>
    public abstract bool IsExposed(PointIndex slot);

    /// <summary>The network that brings a stream from one device to another; -1 when none does.</summary>
    public abstract int NetworkBetween(int sender, int receiver);

    /// <summary>The links a stream takes from one device to another, by position; empty when it takes none.</summary>
    public abstract IReadOnlyList<int> LinksBetween(int sender, int receiver);

    /// <summary>Directions of links that streams could overfill, streams that stay counted in; empty when no choice could.</summary>
    public abstract IReadOnlyList<PartLink> Links { get; }

    /// <summary>Positions in <see cref="Links"/> of the directions that a stream passes from one device to another on the network between them.</summary>
    public abstract IReadOnlyList<int> LinksPassed(int sender, int receiver);

    /// <summary>What the stream of a transmit block takes of a direction it passes, in bit/s. It counts once however many receivers it has.</summary>
    /// <param name="transmitBlock">Position of the block.</param>
    /// <param name="link">Position in <see cref="Links"/>.</param>
    public abstract long LoadOf(int transmitBlock, int link);

    /// <summary>How many transmit blocks a device may send.</summary>
    public abstract int SentLimit(int device);

    /// <summary>How many streams a device may receive.</summary>
    public abstract int ReceivedLimit(int device);

    /// <summary>Number of a point's port group among all port groups.</summary>
    public abstract int PortGroupOf(PointIndex point);

    /// <summary>Outputs of a port group that count as spares; 0 for groups of other kinds.</summary>
    public abstract int UsableOutputs(int portGroup);

    /// <summary>Scores choices as the engine will.</summary>
    /// <param name="choices">For each demand of the part the position of a candidate, or <see cref="StrategyAnswer.LeftOut"/>.</param>
    /// <returns>The numbers of this part with streams that stay counted in; null when the choices cannot stand together.</returns>
    /// <exception cref="ArgumentException">There are not as many choices as demands, or one is no position.</exception>
    public abstract ObjectiveVector? Score(IReadOnlyList<int> choices);

    /// <summary>Choices that stand together, found quickly and not improved; null when the quick way finds none.</summary>
    /// <param name="cancellation">Stops early; demands not yet looked at are left out.</param>
    public abstract IReadOnlyList<int>? Construct(CancellationToken cancellation);
}
