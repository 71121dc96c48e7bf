namespace RoutingRules.Resolving;

/// <summary>What brings signal to a point.</summary>
public enum HopKind : byte
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A fixed routing entry of the profile.</summary>
    Fixed,

    /// <summary>A path through processing or a passive split.</summary>
    Through,

    /// <summary>A factory route.</summary>
    Factory,

    /// <summary>A route of the patch.</summary>
    Route,

    /// <summary>A null route of the patch: nothing on purpose.</summary>
    Cleared,

    /// <summary>A stream.</summary>
    Stream,

    /// <summary>A cable.</summary>
    Cable,

    /// <summary>A network link that is itself the stream, between carrier slots.</summary>
    Carrier,
}
