using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Planning.Changeovers;

/// <summary>Something that is plugged in.</summary>
/// <param name="Key">Feed or line, its id in the second show, and the entry or end.</param>
/// <param name="Demand">The feed or line.</param>
/// <param name="At">Where.</param>
/// <param name="IsInEar">True for a feed that is in-ear by its role or by where it is plugged in.</param>
internal sealed record Plug((bool IsFeed, string Id, int End) Key, DemandNode Demand, PointRange At, bool IsInEar)
{
    public string Name => IsInEar ? $"'{Demand.DisplayName}' (in-ear)" : $"'{Demand.DisplayName}'";

    public bool Overlaps(PointRange at) => At.Device == at.Device && At.Group == at.Group && At.First <= at.Last && at.First <= At.Last;
}
