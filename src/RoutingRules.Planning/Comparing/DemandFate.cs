namespace RoutingRules.Planning.Comparing;

/// <summary>What became of a demand: one destination of a feed, or a line.</summary>
public enum DemandFate
{
    /// <summary>It is new.</summary>
    Added,

    /// <summary>It is gone.</summary>
    Removed,

    /// <summary>It is at another point.</summary>
    Moved,

    /// <summary>It had no place and has one now.</summary>
    Placed,

    /// <summary>It had a place and is not delivered any more.</summary>
    Lost,

    /// <summary>It is where it was under another id.</summary>
    Renamed,
}
