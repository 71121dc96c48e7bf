using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>One act as a show of its own.</summary>
public sealed record ActPlan
{
    /// <summary>The act.</summary>
    public required Act Act { get; init; }

    /// <summary>The show: the rig, what the house and the act have, and the patch.</summary>
    public required Show Show { get; init; }

    /// <summary>True when the patch was worked out; false when the document gives it.</summary>
    public required bool IsAssigned { get; init; }

    /// <summary>What the rules say about the show.</summary>
    public required CheckResult Check { get; init; }

    /// <summary>Feeds and lines without a place; empty for a patch that the document gives.</summary>
    public ValueList<UnplacedDemand> Unplaced { get; init; }
}
