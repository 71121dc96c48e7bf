namespace RoutingRules.Planning.NewShows;

/// <summary>A kind of change that makes room in a starting show.</summary>
public enum StarterChange
{
    /// <summary>Another profile for the console.</summary>
    Console,

    /// <summary>Another profile for the monitor console.</summary>
    MonitorConsole,

    /// <summary>Another profile for all stage boxes.</summary>
    BoxProfile,

    /// <summary>More stage boxes.</summary>
    MoreBoxes,
}
