using RoutingRules.Model;

namespace RoutingRules.Profiles;

/// <summary>Routes that stand until something overrides them, position by position.</summary>
public sealed record FactoryRoute
{
    /// <summary>The sources.</summary>
    public required GroupRange From { get; init; }

    /// <summary>The sinks, as many as sources.</summary>
    public required GroupRange To { get; init; }
}
