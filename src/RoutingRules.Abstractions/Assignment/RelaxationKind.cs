namespace RoutingRules.Assignment;

/// <summary>What kind of change would place a demand.</summary>
public enum RelaxationKind
{
    /// <summary>A reserved point is given free; the subject is the point or pair.</summary>
    FreeReserved,

    /// <summary>One output fewer is kept as a spare; the subject is the new number of spares.</summary>
    FewerSpares,

    /// <summary>A held demand may move; the subject is the demand.</summary>
    ReleaseHold,

    /// <summary>A pinned demand may go elsewhere on its device; the subject is the demand.</summary>
    DropPin,

    /// <summary>One more zone is allowed; the subject is the zone.</summary>
    AllowZone,
}
