using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Why the demands of a feed or a line are where they are in the assignment of a show.</summary>
public sealed record WhyAnswer
{
    /// <summary>The id of the feed or line.</summary>
    public required string Subject { get; init; }

    /// <summary>How far the assignment got.</summary>
    public required AssignmentStatus Status { get; init; }

    /// <summary>How good the assignment is; null when pins contradict.</summary>
    public required ObjectiveVector? Objective { get; init; }

    /// <summary>One decision for each demand asked about, in demand order.</summary>
    public required ValueList<WhyDecision> Decisions { get; init; }

    /// <summary>What follows from the place that was asked about; null when none was.</summary>
    public WhatIf? WhatIf { get; init; }

    /// <summary>How full each device is, in rig order.</summary>
    public required ValueList<DeviceUse> Utilisation { get; init; }

    /// <summary>How full each direction of a link is that a stream passes, in rig order.</summary>
    public ValueList<LinkUse> Links { get; init; }
}
