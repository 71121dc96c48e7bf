using RoutingRules.Model;

namespace RoutingRules.Planning.NewShows;

/// <summary>What of a starting show does not fit on its equipment.</summary>
public sealed record StarterShortage
{
    /// <summary>What there is too much of.</summary>
    public required StarterPart Part { get; init; }

    /// <summary>How many were asked for; 1 for a ring.</summary>
    public required int Asked { get; init; }

    /// <summary>How many of it have a place, tried with everything else as it was asked for; null when something else does not fit even without any.</summary>
    public required int? Fitting { get; init; }

    /// <summary>What stands against it, for a person.</summary>
    public required string Reason { get; init; }

    /// <summary>What makes room, the single changes first; empty when nothing that was tried does.</summary>
    public required ValueList<StarterRoom> Room { get; init; }
}
