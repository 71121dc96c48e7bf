namespace RoutingRules.Assignment.Problem;

/// <summary>A whole block of transmit slots, or all the slots of a digital multicore in one direction.</summary>
internal sealed class TransmitBlock
{
    public required int Id { get; init; }

    /// <summary>Position of the device.</summary>
    public required int Device { get; init; }

    /// <summary>First slot as a graph point.</summary>
    public required int First { get; init; }

    public required int Width { get; init; }

    /// <summary>For a digital multicore: the receive block at the other end of the link; else -1.</summary>
    public int CarrierTo { get; set; } = -1;

    /// <summary>True when a stream the assignment must keep sends it: its slots and receivers stay as they are.</summary>
    public bool IsKept { get; set; }

    /// <summary>True when the kept stream has a receiver, so that the block counts as used.</summary>
    public bool IsHeard { get; set; }

    /// <summary>The network of the kept stream; -1 otherwise.</summary>
    public int KeptNetwork { get; set; } = -1;

    /// <summary>Position of the kept stream; -1 otherwise.</summary>
    public int KeptStream { get; set; } = -1;

    /// <summary>
    /// Receive blocks of the input on devices that no demand mentions; each stays as long as no demand puts something else into the slots it takes.
    /// </summary>
    public List<int> Bystanders { get; } = [];

    /// <summary>The network on which the bystanders take it.</summary>
    public int BystanderNetwork { get; set; } = -1;

    public bool IsCarrier => CarrierTo >= 0;
}
