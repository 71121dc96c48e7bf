using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>A block that can be received: a whole block of receive slots, or all the slots of a digital multicore in one direction.</summary>
public sealed class PartReceiveBlock
{
    /// <summary>Position of the device.</summary>
    public required int Device { get; init; }

    /// <summary>Number of the receive group among all port groups.</summary>
    public required int PortGroup { get; init; }

    /// <summary>First slot.</summary>
    public required PointIndex First { get; init; }

    /// <summary>Number of slots.</summary>
    public required int Width { get; init; }

    /// <summary>For a digital multicore the transmit block at its other end; else -1.</summary>
    public required int CarrierFrom { get; init; }

    /// <summary>The transmit slot its first slot takes in the input, when the block is taken whole; else <see cref="PointIndex.None"/>.</summary>
    public required PointIndex InputStart { get; init; }

    /// <summary>True when a stream that stays feeds it.</summary>
    public required bool IsKept { get; init; }
}
