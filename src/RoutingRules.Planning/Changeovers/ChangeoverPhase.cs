namespace RoutingRules.Planning.Changeovers;

/// <summary>The parts of a changeover, in the order in which they are done.</summary>
public enum ChangeoverPhase
{
    /// <summary>What nobody hears and nothing needs: done while the act before still plays.</summary>
    Prepare,

    /// <summary>Every output and channel whose signal will change is muted or turned down, in-ears first.</summary>
    Mute,

    /// <summary>Phantom power goes off, or is seen to be off, before a plug is pulled.</summary>
    PhantomOff,

    /// <summary>Devices, cables and lines on the stage.</summary>
    Stage,

    /// <summary>Phantom power comes on, before anything is patched to it.</summary>
    PhantomOn,

    /// <summary>What is plugged is read back from the cards.</summary>
    ReadBack,

    /// <summary>Routes and streams are loaded.</summary>
    Patch,

    /// <summary>Labels are loaded.</summary>
    Labels,

    /// <summary>Each output is seen to carry what it shall, still muted, in-ears first.</summary>
    Verify,

    /// <summary>Clocks and sample rates: last, alone, with everything muted.</summary>
    Clock,

    /// <summary>Outputs come back one at a time from low level, in-ears first; channels with the line check.</summary>
    Open,
}
