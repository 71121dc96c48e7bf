using RoutingRules.Model;

namespace RoutingRules.Planning.NewShows;

/// <summary>Options under which everything that was asked for has a place, and what in them differs. Each was tried.</summary>
public sealed record StarterRoom
{
    /// <summary>What differs; several only where no single change is enough.</summary>
    public required ValueList<StarterChange> Changes { get; init; }

    /// <summary>The changed options.</summary>
    public required StarterOptions Options { get; init; }
}
