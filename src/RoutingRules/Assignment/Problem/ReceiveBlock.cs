namespace RoutingRules.Assignment.Problem;

/// <summary>A whole block of receive slots, or all the slots of a digital multicore in one direction.</summary>
internal sealed class ReceiveBlock
{
    public required int Id { get; init; }

    /// <summary>Position of the device.</summary>
    public required int Device { get; init; }

    /// <summary>Number of the receive group among all port groups.</summary>
    public required int PortGroup { get; init; }

    /// <summary>First slot as a graph point.</summary>
    public required int First { get; init; }

    public required int Width { get; init; }

    /// <summary>For a digital multicore: the transmit block at the other end of the link; else -1.</summary>
    public int CarrierFrom { get; set; } = -1;

    /// <summary>The transmit slot its first slot takes in the input when the block is taken whole and on the grid; else -1.</summary>
    public int InputStart { get; set; } = -1;

    /// <summary>True when a kept stream feeds it.</summary>
    public bool IsKept { get; set; }

    /// <summary>False for a block that a kept stream feeds over a network without a way to it: nothing arrives there.</summary>
    public bool HasWay { get; set; } = true;

    public bool IsCarrier => CarrierFrom >= 0;
}
