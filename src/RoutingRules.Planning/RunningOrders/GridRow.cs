using RoutingRules.Model;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>What is plugged into one input, act by act.</summary>
internal sealed record GridRow
{
    /// <summary>The input.</summary>
    public required Point At { get; init; }

    /// <summary>One cell for each act, in the order in which they play; null where nothing is plugged.</summary>
    public required ValueList<GridCell?> Acts { get; init; }
}
