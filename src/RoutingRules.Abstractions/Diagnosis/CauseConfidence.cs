namespace RoutingRules.Diagnosis;

/// <summary>How sure it is that a cause is the right one.</summary>
public enum CauseConfidence
{
    /// <summary>No other repair as small makes the same findings go away.</summary>
    Only,

    /// <summary>Another repair does as well; see <see cref="Cause.Alternatives"/>.</summary>
    Tie,

    /// <summary>Not everything that could have been the cause was tried, because there was too much of it.</summary>
    Partial,
}
