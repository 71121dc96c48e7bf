namespace RoutingRules.Checking.Facts.Feeds;

/// <summary>How one entry of a feed stands in the patch.</summary>
internal enum EntryState
{
    /// <summary>It names something that does not resolve, or another rule says why signal fails to arrive.</summary>
    Unknown,

    /// <summary>It arrives as wanted.</summary>
    Served,

    /// <summary>A pair arrives with right first.</summary>
    Swapped,

    /// <summary>Both halves of a pair arrive, but not side by side.</summary>
    Split,

    /// <summary>One half of a pair arrives.</summary>
    Half,

    /// <summary>Nothing of it arrives.</summary>
    Missing,
}
