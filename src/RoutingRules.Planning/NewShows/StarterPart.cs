namespace RoutingRules.Planning.NewShows;

/// <summary>What a starting show can have too much of.</summary>
public enum StarterPart
{
    /// <summary>Main mixes.</summary>
    Mains,

    /// <summary>Mixes of subwoofers.</summary>
    Subs,

    /// <summary>Monitor mixes.</summary>
    Monitors,

    /// <summary>Stereo in-ear mixes.</summary>
    InEars,

    /// <summary>Voices.</summary>
    Vocals,

    /// <summary>Microphones for instruments.</summary>
    Microphones,

    /// <summary>Microphones and direct boxes that want phantom power.</summary>
    PhantomLines,

    /// <summary>Stereo lines.</summary>
    StereoLines,

    /// <summary>A ring of network links.</summary>
    Redundancy,
}
