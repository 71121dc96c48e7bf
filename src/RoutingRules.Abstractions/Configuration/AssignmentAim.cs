namespace RoutingRules.Configuration;

/// <summary>What an assignment tries for once everything that must be is; listed in the usual order.</summary>
public enum AssignmentAim
{
    /// <summary>Parts of a set on equal numbers.</summary>
    Sets,

    /// <summary>Members of a group on one device.</summary>
    Groups,

    /// <summary>Preferred numbers.</summary>
    Distance,

    /// <summary>List order.</summary>
    Order,

    /// <summary>Few slots written anew.</summary>
    Rewritten,

    /// <summary>Few transmit blocks.</summary>
    TransmitBlocks,

    /// <summary>Few receive blocks.</summary>
    ReceiveBlocks,

    /// <summary>Low numbers.</summary>
    Numbers,
}
