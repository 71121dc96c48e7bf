namespace RoutingRules.Model;

/// <summary>What is dropped last when not everything fits.</summary>
public enum Priority
{
    /// <summary>The show cannot start without it.</summary>
    Critical,

    /// <summary>Missed at once.</summary>
    High,

    /// <summary>The usual case.</summary>
    Normal,

    /// <summary>Nice to have.</summary>
    Low,
}
