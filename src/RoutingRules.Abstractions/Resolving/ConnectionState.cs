namespace RoutingRules.Resolving;

/// <summary>Whether a route, stream receiver, cable or link connects anything, and why not.</summary>
public enum ConnectionState : byte
{
    /// <summary>It connects its points.</summary>
    Connected,

    /// <summary>It names a device, port group or network that does not exist; nothing is connected.</summary>
    UnknownReference,

    /// <summary>It names numbers beyond the end of a port group; nothing is connected.</summary>
    OutOfRange,

    /// <summary>Its ends are of unequal width; nothing is connected.</summary>
    WidthMismatch,

    /// <summary>An end is of a kind that cannot be there, such as a route into a bus; nothing is connected.</summary>
    WrongKind,

    /// <summary>A route between two devices, or a link from a device to itself; nothing is connected.</summary>
    WrongDevice,
}
