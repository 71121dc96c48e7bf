namespace RoutingRules.Resolving;

/// <summary>Whether a device has the profile it names, and why not.</summary>
public enum ProfileState : byte
{
    /// <summary>The profile was found.</summary>
    Found,

    /// <summary>No source of profiles holds it; the device has no points.</summary>
    Unknown,

    /// <summary>Its document cannot be read; the device has no points.</summary>
    Unreadable,

    /// <summary>It was found, but the rig has too many points already; the device has none.</summary>
    RigFull,
}
