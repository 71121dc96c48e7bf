using RoutingRules.Model;
using RoutingRules.Profiles;

namespace RoutingRules.Tracing;

/// <summary>A point on a traced path, with what a person needs to find it.</summary>
public sealed record TracePoint
{
    /// <summary>The address.</summary>
    public required Point At { get; init; }

    /// <summary>What the point is.</summary>
    public required PortKind Kind { get; init; }

    /// <summary>The text shown there; null when the document gives none.</summary>
    public string? Label { get; init; }

    /// <summary>True when the document says that the point does not work.</summary>
    public bool IsDead { get; init; }

    /// <summary>True when the document keeps the point for somebody else.</summary>
    public bool IsReserved { get; init; }

    /// <summary>Why it is dead or reserved; null when nothing was said.</summary>
    public string? MarkReason { get; init; }

    /// <summary>What the device's profile says its port group takes, in milliseconds; null when it says nothing.</summary>
    public double? LatencyMilliseconds { get; init; }
}
