using RoutingRules.Model;

namespace RoutingRules.Profiles;

/// <summary>A path through a device, position i to position i.</summary>
public sealed record ThroughEntry
{
    /// <summary>What it is.</summary>
    public required ThroughKind Kind { get; init; }

    /// <summary>Where signal enters the path.</summary>
    public required Id<PortGroup> From { get; init; }

    /// <summary>Where it leaves.</summary>
    public required Id<PortGroup> To { get; init; }

    /// <summary>Whether phantom power passes.</summary>
    public bool Phantom { get; init; }

    /// <summary>Latency in milliseconds, 0 or more.</summary>
    public double? LatencyMilliseconds { get; init; }
}
