using RoutingRules.Assignment.Problem;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Wiring;

/// <summary>What any wiring must use at least, read off the places of demands alone.</summary>
/// <remarks>
/// Deliveries of senders with a digital multicore, and all of them where streams are kept, are not counted: zero is always a floor.
/// </remarks>
internal sealed class WiringFloor
{
    /// <summary>A whole block in the parts in which shared blocks are counted.</summary>
    public const int WholeBlock = 12;

    private readonly AssignmentProblem problem;
    private readonly int[] transmitWidth;
    private readonly int[] receiveWidth;
    private readonly bool[] isCountedSender;
    private readonly Dictionary<int, int> tied = [];
    private readonly int[] demandsOf;
    private readonly bool[] isFull;

    public WiringFloor(AssignmentProblem problem)
    {
        this.problem = problem;
        transmitWidth = new int[problem.DeviceCount];
        receiveWidth = new int[problem.DeviceCount];
        isCountedSender = new bool[problem.DeviceCount];
        Array.Fill(isCountedSender, !problem.TransmitBlocks.Any(block => block.IsKept) && !problem.ReceiveBlocks.Any(block => block.IsKept));
        var graph = problem.Show.Graph;
        foreach (var block in problem.TransmitBlocks)
        {
            transmitWidth[block.Device] = Math.Max(transmitWidth[block.Device], block.Width);
            isCountedSender[block.Device] &= !block.IsCarrier;
            for (var slot = block.First; slot < block.First + block.Width; slot++)
            {
                if (graph.FixedSource(new PointIndex(slot)) is { IsNone: false } source)
                {
                    tied[source.Value] = tied.ContainsKey(source.Value) ? -1 : block.Id;
                }
            }
        }

        foreach (var block in problem.ReceiveBlocks)
        {
            receiveWidth[block.Device] = Math.Max(receiveWidth[block.Device], block.Width);
        }

        demandsOf = new int[graph.PointCount];
        foreach (var demand in problem.Demands)
        {
            for (var position = 0; demand.Node.Feed is { Source.IsNone: false } feed && position < feed.Width; position++)
            {
                demandsOf[feed.Source.Value + position]++;
            }
        }

        isFull = Array.ConvertAll(problem.ReceiveBlocks, IsFullBlock);
    }

    /// <summary>Slots of the widest transmit block of a device.</summary>
    public int TransmitWidth(int device) => Math.Max(1, transmitWidth[device]);

    /// <summary>Slots of the widest receive block of a device.</summary>
    public int ReceiveWidth(int device) => Math.Max(1, receiveWidth[device]);

    /// <summary>True for deliveries over streams whose blocks the floor counts.</summary>
    public bool IsCounted(Delivery delivery) => !delivery.IsLocal && isCountedSender[delivery.Sender];

    /// <summary>The one transmit block in which a source can travel; -1 when there is a choice or none.</summary>
    public int TiedBlock(Delivery delivery)
    {
        // A slot that always carries an input stands for it.
        if (problem.TransmitBlockOf[delivery.Source] >= 0)
        {
            return problem.TransmitBlockOf[delivery.Source];
        }

        if (!tied.TryGetValue(delivery.Source, out var block) || block < 0)
        {
            return -1;
        }

        // A second group may take the source freely.
        var graph = problem.Show.Graph;
        foreach (var group in problem.Show.Devices[delivery.Sender].Groups)
        {
            if (
                group.Kind == PortKind.Transmit
                && graph.RoutingBetween(new PointIndex(delivery.Source), problem.Show.Devices[delivery.Sender].First(group)) is { Mode: not RoutingMode.Fixed }
            )
            {
                return -1;
            }
        }

        return block;
    }

    /// <summary>True when a source point serves one demand only.</summary>
    public bool IsUnique(int source) => demandsOf[source] <= 1;

    /// <summary>
    /// What part of a transmit block a full receive block with a source costs at least, in parts of <see cref="WholeBlock"/>: blocks that share one
    /// all carry the source, so no more can share than there are demands for it.
    /// </summary>
    public int ShareOf(int source) => WholeBlock / Math.Max(1, demandsOf[source]);

    /// <summary>
    /// True when a receive block with a source of its own cannot share its transmit block with another block for which the same is true: every position
    /// sounds at an output that has to be silent otherwise, and a transmit block is not wider.
    /// </summary>
    public bool IsFull(int receiveBlock, int sender) => isFull[receiveBlock] && TransmitWidth(sender) <= problem.ReceiveBlocks[receiveBlock].Width;

    /// <summary>True when every position of a block sounds at an output that has to be silent otherwise.</summary>
    public bool IsFullBlock(ReceiveBlock block)
    {
        for (var slot = block.First; slot < block.First + block.Width; slot++)
        {
            if (
                !Array.Exists(
                    problem.FixedOutputsOf[slot],
                    output => problem.MustBeSilent[output] && problem.BlockOf[output] is null && problem.Tolerated[output] < 0
                )
            )
            {
                return false;
            }
        }

        return true;
    }
}
