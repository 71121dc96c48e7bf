namespace RoutingRules.Planning.RunningOrders;

/// <summary>Something a line or feed names.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">What people call it.</param>
/// <param name="SuppliedBy">Who brings it; null when the document does not say.</param>
/// <param name="Count">How many, from 1.</param>
internal sealed record KitItem(KitKind Kind, string Name, string? SuppliedBy, int Count);
