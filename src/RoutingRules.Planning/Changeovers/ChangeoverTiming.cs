namespace RoutingRules.Planning.Changeovers;

/// <summary>When a step of a changeover can be done.</summary>
public enum ChangeoverTiming
{
    /// <summary>While the act before plays.</summary>
    Ahead,

    /// <summary>When the stage is clear.</summary>
    ClearStage,

    /// <summary>After the stage work, before the line check begins.</summary>
    BeforeLineCheck,

    /// <summary>During the line check.</summary>
    LineCheck,
}
