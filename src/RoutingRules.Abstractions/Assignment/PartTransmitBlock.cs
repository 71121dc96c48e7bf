using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>A block that can be sent: a whole block of transmit slots, or all the slots of a digital multicore in one direction.</summary>
public sealed class PartTransmitBlock
{
    /// <summary>Position of the device.</summary>
    public required int Device { get; init; }

    /// <summary>First slot.</summary>
    public required PointIndex First { get; init; }

    /// <summary>Number of slots.</summary>
    public required int Width { get; init; }

    /// <summary>For a digital multicore the receive block at its other end, which costs nothing and counts against no limit; else -1.</summary>
    public required int CarrierTo { get; init; }

    /// <summary>True when a stream that stays sends it.</summary>
    public required bool IsKept { get; init; }

    /// <summary>True when the stream that stays has a receiver, so that the block counts as used.</summary>
    public required bool IsHeard { get; init; }

    /// <summary>The network of the stream that stays; -1 otherwise.</summary>
    public required int KeptNetwork { get; init; }

    /// <summary>
    /// Receive blocks on devices that no demand mentions; each goes on taking the block, and counts, when it is used and none of the slots it takes gets
    /// another source than in the input.
    /// </summary>
    public required IReadOnlyList<int> Bystanders { get; init; }
}
