namespace RoutingRules.Planning.Comparing;

/// <summary>What became of the signal at an output or a channel.</summary>
public enum SinkEffect
{
    /// <summary>It carries another source, or the same input with something else plugged in.</summary>
    Changes,

    /// <summary>It was silent and carries something now.</summary>
    Starts,

    /// <summary>It carried something and is silent now.</summary>
    Stops,

    /// <summary>It did not exist and carries something now.</summary>
    Appears,

    /// <summary>It carried something and does not exist any more.</summary>
    Disappears,
}
