namespace RoutingRules.Resolving;

/// <summary>A sink at which a route has no effect because the profile fixes what the sink takes.</summary>
public sealed record IdleRoute
{
    /// <summary>The sink.</summary>
    public required PointIndex Sink { get; init; }

    /// <summary>Position of the route in the patch, from 0.</summary>
    public required int RouteIndex { get; init; }
}
