namespace RoutingRules.Assignment.Wiring;

/// <summary>Contents of transmit blocks and what each receive block takes.</summary>
internal sealed class WiringPlan
{
    /// <summary>The cost.</summary>
    public required WiringCost Cost { get; init; }

    /// <summary>True when no cheaper wiring exists.</summary>
    public required bool IsBest { get; init; }

    /// <summary>Transmit slots that carry something, with their sources, by slot.</summary>
    public required (int Slot, int Source)[] Contents { get; init; }

    /// <summary>
    /// Slots that no demand needs, filled or silent, of blocks that a receiver goes on taking that no demand mentions: they stay as they are.
    /// </summary>
    public required int[] Untouched { get; init; }

    /// <summary>Transmit blocks in use, by id; kept streams left out.</summary>
    public required int[] UsedTransmit { get; init; }

    /// <summary>For each receive block the transmit slot its first slot takes; -1 for none; kept streams left out.</summary>
    public required int[] ReceiveStart { get; init; }

    /// <summary>Routes from receive slots to freely routed sinks.</summary>
    public required (int Slot, int Sink)[] FreeRoutes { get; init; }
}
