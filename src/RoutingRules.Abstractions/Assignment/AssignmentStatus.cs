namespace RoutingRules.Assignment;

/// <summary>How far an assignment got.</summary>
public enum AssignmentStatus
{
    /// <summary>Nothing better exists, proven on every level.</summary>
    Optimal,

    /// <summary>Valid; <see cref="AssignmentResult.ProvenNumbers"/> says how far it is proven best.</summary>
    Feasible,

    /// <summary>Pins of the document cannot hold together; the rest is assigned without them.</summary>
    PinsContradict,

    /// <summary>
    /// Valid, but the work was stopped before the search ended: what is left unplaced may well have a place. <see cref="AssignmentResult.ProvenNumbers"/>
    /// says how far it is proven best all the same.
    /// </summary>
    Stopped,
}
