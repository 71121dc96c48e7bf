using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Planning.Comparing;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>The changeover from one act to the next.</summary>
public sealed record RunningOrderChangeover
{
    /// <summary>The act before.</summary>
    public required Act From { get; init; }

    /// <summary>The act that comes.</summary>
    public required Act To { get; init; }

    /// <summary>What differs.</summary>
    public required ShowComparison Comparison { get; init; }

    /// <summary>The steps.</summary>
    public required ChangeoverPlan Plan { get; init; }
}
