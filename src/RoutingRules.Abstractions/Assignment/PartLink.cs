namespace RoutingRules.Assignment;

/// <summary>One direction of a link that streams could overfill.</summary>
public sealed class PartLink
{
    /// <summary>Position of the link in the rig.</summary>
    public required int Link { get; init; }

    /// <summary>True for the direction from the link's first jack to its second.</summary>
    public required bool IsForward { get; init; }

    /// <summary>What other streams may take beside those that stay, in bit/s; 0 when nothing may pass any more.</summary>
    public required long Room { get; init; }

    /// <summary>Transmit blocks, by position, whose streams stay and pass here already; more receivers behind it cost nothing.</summary>
    public required IReadOnlyList<int> Staying { get; init; }
}
