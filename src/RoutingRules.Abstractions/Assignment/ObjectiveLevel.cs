namespace RoutingRules.Assignment;

/// <summary>The levels of the objective that may be reordered, in their usual order.</summary>
public enum ObjectiveLevel
{
    /// <summary>Pairs of parts of a set on different devices with different numbers.</summary>
    Sets,

    /// <summary>Devices beyond the first that a group is spread over.</summary>
    Groups,

    /// <summary>Distance from preferred numbers, and between numbers of broken sets.</summary>
    Distance,

    /// <summary>Pairs of demands in one port group whose numbers oppose the list order.</summary>
    Order,

    /// <summary>Slots, blocks and routes inside devices under unmoved demands that change.</summary>
    Rewritten,

    /// <summary>Transmit blocks used.</summary>
    TransmitBlocks,

    /// <summary>Receive blocks used.</summary>
    ReceiveBlocks,

    /// <summary>Sum of the numbers of first points.</summary>
    Numbers,
}
