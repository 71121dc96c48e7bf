using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Problem;

/// <summary>A show laid out for assignment. Immutable once built; shared by every search.</summary>
internal sealed class AssignmentProblem
{
    public required ResolvedShow Show { get; init; }

    public required AssignmentOptions Options { get; init; }

    public required Demand[] Demands { get; init; }

    public required TransmitBlock[] TransmitBlocks { get; init; }

    public required ReceiveBlock[] ReceiveBlocks { get; init; }

    /// <summary>Transmit block of each point; -1 for points that are no usable transmit slot.</summary>
    public required int[] TransmitBlockOf { get; init; }

    /// <summary>Receive block of each point; -1 for points that are no usable receive slot.</summary>
    public required int[] ReceiveBlockOf { get; init; }

    /// <summary>
    /// Outputs that each receive slot feeds by fixed routing that cannot be cleared, or whenever their block is routed; empty for most points.
    /// </summary>
    public required int[][] FixedOutputsOf { get; init; }

    /// <summary>Routing in blocks inside devices.</summary>
    public required BlockRouting Blocks { get; init; }

    /// <summary>Devices with routes in blocks that could serve a demand and are not tried: then nothing is claimed. In device order, mostly none.</summary>
    public IReadOnlyList<DeviceNode> Untried { get; set; } = [];

    /// <summary>For an output that is routed in blocks, all outputs of its block; null for others.</summary>
    public required int[]?[] BlockOf { get; init; }

    /// <summary>Outputs that must be silent when idle: all but dead ones and those of excluded devices.</summary>
    public required bool[] MustBeSilent { get; init; }

    /// <summary>For each point the source an idle output may go on carrying when strays of the input are tolerated; -1 for none.</summary>
    public required int[] Tolerated { get; init; }

    /// <summary>Points that are dead, reserved or excluded: never chosen.</summary>
    public required bool[] IsBarred { get; init; }

    /// <summary>Points excluded by the options, by themselves or with their device.</summary>
    public required bool[] IsExcludedPoint { get; init; }

    /// <summary>First network that two devices both sit on, row by row; -1 when there is none or no way over it.</summary>
    public required int[] NetworkBetween { get; init; }

    /// <summary>How many transmit blocks a device may send, headroom taken off.</summary>
    public required int[] SentLimit { get; init; }

    /// <summary>How many streams a device may receive, headroom taken off.</summary>
    public required int[] ReceivedLimit { get; init; }

    /// <summary>Number of each point's port group among all port groups.</summary>
    public required int[] PortGroupOf { get; init; }

    /// <summary>Outputs that count as spares while nothing is placed there: usable, and named by no line.</summary>
    public required bool[] IsSpare { get; init; }

    /// <summary>What must not get to loudspeakers, and from where it would.</summary>
    public required Exposure Exposure { get; init; }

    /// <summary>Outputs of each port group that count as spares; 0 for other groups.</summary>
    public required int[] UsableOutputs { get; init; }

    public required bool[] IsExcluded { get; init; }

    /// <summary>Paths without excluded links and devices.</summary>
    public required NetworkMap Network { get; init; }

    /// <summary>True when the work was stopped before all places were looked at, so that nothing can be said about what has none.</summary>
    public bool IsCut { get; set; }

    /// <summary>Streams of the input that stay whatever is assigned.</summary>
    public List<StreamNode> Staying { get; } = [];

    /// <summary>Links that streams could overfill.</summary>
    public LinkRoom Links { get; set; } = LinkRoom.None;

    /// <summary>Points that the document gives to demands; set once the demands are.</summary>
    public GivenPoints Given { get; set; } = null!;

    public int DeviceCount => Show.Devices.Count;

    /// <summary>The receive slot that a sink is, or takes by fixed or block routing; -1 when it is routed freely.</summary>
    public int ReceiveSlotOf(int sink)
    {
        if (ReceiveBlockOf[sink] >= 0)
        {
            return sink;
        }

        var slot = Show.Graph.FixedSource(new(sink)) is { } always ? always.Value : Blocks.ReceiveSlot(sink);
        return slot >= 0 && ReceiveBlockOf[slot] >= 0 ? slot : -1;
    }

    /// <summary>The receive block that feeds a sink without choice; -1 for freely routed sinks.</summary>
    public int FixedBlockOf(int sink) => ReceiveSlotOf(sink) is >= 0 and var slot ? ReceiveBlockOf[slot] : -1;

    /// <summary>The same problem with links that hold everything.</summary>
    public AssignmentProblem WithoutLinkRoom()
    {
        var copy = (AssignmentProblem)MemberwiseClone();
        copy.Links = LinkRoom.None;
        return copy;
    }

    public int NetworkFrom(int sender, int receiver) => NetworkBetween[(sender * DeviceCount) + receiver];
}
