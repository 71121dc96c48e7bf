using RoutingRules.Model;

namespace RoutingRules.Profiles;

/// <summary>Latency of a port group.</summary>
public sealed record GroupLatency
{
    /// <summary>The group.</summary>
    public required Id<PortGroup> Group { get; init; }

    /// <summary>Latency in milliseconds, 0 or more.</summary>
    public required double Value { get; init; }
}
