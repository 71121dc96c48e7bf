using RoutingRules.Assignment;
using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>Which losses are looked at and what may be done about them.</summary>
public sealed record ImpactOptions
{
    /// <summary>The kinds of things that fail; empty for all but points, which are many.</summary>
    public ValueList<LossKind> Kinds { get; init; }

    /// <summary>Whether to look for two losses that together silence what neither does alone.</summary>
    public bool Pairs { get; init; }

    /// <summary>How many feeds and lines a plan may plug elsewhere, 0 or more; for a pair as many as for one loss.</summary>
    public int Moves { get; init; } = 8;

    /// <summary>Whether to make a plan for each loss and each pair that is listed.</summary>
    public bool Recovery { get; init; } = true;

    /// <summary>The largest sets of failures that are looked for, 0 (none) to 3.</summary>
    public int SetSize { get; init; } = 2;

    /// <summary>How the show is assigned in plans; null for the usual way. Its <c>Without</c>, <c>LeaveOut</c> and <c>Avoid</c> hold in addition.</summary>
    public AssignmentOptions? Assignment { get; init; }
}
