namespace RoutingRules.Profiles;

/// <summary>Limits of a device.</summary>
public sealed record ProfileLimits
{
    /// <summary>How many transmit blocks it can send.</summary>
    public int? StreamsSent { get; init; }

    /// <summary>How many different streams it can receive.</summary>
    public int? StreamsReceived { get; init; }

    /// <summary>How many network hops it allows.</summary>
    public int? Hops { get; init; }

    /// <summary>How many characters it shows, from 1.</summary>
    public int? LabelLength { get; init; }
}
