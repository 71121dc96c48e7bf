using RoutingRules.Assignment.Problem;
using RoutingRules.Profiles;

namespace RoutingRules.Assignment.Wiring;

/// <summary>What stays the same for every wiring of a problem.</summary>
internal sealed class WiringTables
{
    private readonly AssignmentProblem problem;

    public WiringTables(AssignmentProblem problem)
    {
        this.problem = problem;
        BlocksOf = ByDevice(problem.TransmitBlocks, block => block.Device);
        ReceiveBlocksOf = ByDevice(problem.ReceiveBlocks, block => block.Device);
        FeedsBystanders = Array.ConvertAll(BlocksOf, blocks => Array.Exists(blocks, block => block.Bystanders.Count > 0));
        HasBystanders = Array.Exists(FeedsBystanders, device => device);
        IsParticular = Array.ConvertAll(problem.TransmitBlocks, IsParticularBlock);
        FeedsOutputs = Array.ConvertAll(problem.ReceiveBlocks, FeedsAnOutput);
        HasFedOutputs = new bool[problem.DeviceCount];
        KeptStreams = new int[problem.DeviceCount];
        FreeBlocks = new int[problem.DeviceCount];
        foreach (var block in problem.ReceiveBlocks)
        {
            KeptStreams[block.Device] += block.IsKept ? 1 : 0;
            FreeBlocks[block.Device] += block.IsKept ? 0 : 1;
            HasFedOutputs[block.Device] |= FeedsOutputs[block.Id];
        }

        MixesRouting = problem.FixedOutputsOf.Any(outputs => outputs.Length > 1 && outputs.Any(output => problem.BlockOf[output] is not null));
    }

    /// <summary>Transmit blocks by device.</summary>
    public TransmitBlock[][] BlocksOf { get; }

    /// <summary>Receive blocks by device.</summary>
    public ReceiveBlock[][] ReceiveBlocksOf { get; }

    /// <summary>Devices to which receivers listen that no demand mentions.</summary>
    public bool[] FeedsBystanders { get; }

    public bool HasBystanders { get; }

    /// <summary>Transmit blocks for which no other can stand in.</summary>
    public bool[] IsParticular { get; }

    /// <summary>Receive blocks with a slot that feeds an output by fixed routing, is exposed, or is dead or reserved.</summary>
    public bool[] FeedsOutputs { get; }

    /// <summary>Devices that have one of <see cref="FeedsOutputs"/>.</summary>
    public bool[] HasFedOutputs { get; }

    /// <summary>Receive blocks of streams that stay, by device.</summary>
    public int[] KeptStreams { get; }

    /// <summary>The other receive blocks, by device.</summary>
    public int[] FreeBlocks { get; }

    /// <summary>True when a receive slot feeds outputs in blocks and others by fixed routing: then a part is no longer known by its tasks alone.</summary>
    public bool MixesRouting { get; }

    /// <summary>True for a block of which some slot takes only certain sources, so that no other block can stand in for it.</summary>
    private bool IsParticularBlock(TransmitBlock block)
    {
        if (HasBarred(block.First, block.Width))
        {
            return true;
        }

        var graph = problem.Show.Graph;
        var group = graph.GroupOf(new(block.First));
        foreach (var entry in problem.Show.Devices[block.Device].Profile.Routing)
        {
            if (entry.Mode == RoutingMode.Block && entry.To == group.Id)
            {
                return true;
            }
        }

        for (var slot = block.First; slot < block.First + block.Width; slot++)
        {
            if (graph.FixedSource(new(slot)) is not null)
            {
                return true;
            }
        }

        return false;
    }

    public bool HasBarred(int first, int width) => problem.IsBarred.AsSpan(first, width).Contains(true);

    public bool IsExposed(ReceiveBlock block, int position) => !block.IsCarrier && problem.Exposure.IsExposed(problem.Show.Graph, block.First + position);

    private bool FeedsAnOutput(ReceiveBlock block)
    {
        for (var position = 0; position < block.Width; position++)
        {
            if (problem.FixedOutputsOf[block.First + position].Length > 0 || IsExposed(block, position) || problem.IsBarred[block.First + position])
            {
                return true;
            }
        }

        return false;
    }

    private TBlock[][] ByDevice<TBlock>(TBlock[] blocks, Func<TBlock, int> device)
    {
        var byDevice = new TBlock[problem.DeviceCount][];
        for (var index = 0; index < byDevice.Length; index++)
        {
            byDevice[index] = Array.FindAll(blocks, block => device(block) == index);
        }

        return byDevice;
    }
}
