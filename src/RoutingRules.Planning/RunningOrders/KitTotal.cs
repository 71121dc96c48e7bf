using RoutingRules.Model;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>How many of one thing are needed at once.</summary>
public sealed record KitTotal
{
    /// <summary>What it is.</summary>
    public required KitKind Kind { get; init; }

    /// <summary>What people call it, as the document writes it.</summary>
    public required string Name { get; init; }

    /// <summary>Who brings it; null when the document does not say.</summary>
    public string? SuppliedBy { get; init; }

    /// <summary>The most that one act needs, from 1.</summary>
    public required int Most { get; init; }

    /// <summary>The acts that need it, in the order in which they play.</summary>
    public required ValueList<Id<Act>> Acts { get; init; }
}
