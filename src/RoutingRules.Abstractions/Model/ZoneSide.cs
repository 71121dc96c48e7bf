namespace RoutingRules.Model;

/// <summary>The side of a zone as the audience sees it: house left is stage right.</summary>
public enum ZoneSide
{
    /// <summary>No side, such as the mix position.</summary>
    None,

    /// <summary>The audience's left, the performer's right.</summary>
    HouseLeft,

    /// <summary>The audience's right, the performer's left.</summary>
    HouseRight,

    /// <summary>Centre.</summary>
    Centre,
}
