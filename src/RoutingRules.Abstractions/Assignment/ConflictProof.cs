namespace RoutingRules.Assignment;

/// <summary>How it is known that a demand and others cannot all be placed.</summary>
public enum ConflictProof
{
    /// <summary>It was not asked for, or the work allowed for it did not suffice.</summary>
    NotChecked,

    /// <summary>By a search that tried everything; without any one of the others there is a place for all, tried as well.</summary>
    Searched,

    /// <summary>
    /// By counting: they need more points than they may use, of which there may be none at all. Without any one of the others there is a place for
    /// all, tried as well.
    /// </summary>
    Counted,
}
