namespace RoutingRules.Resolving;

/// <summary>The runs that serve a demand in the patch as it stands.</summary>
/// <param name="Demand">The demand.</param>
/// <param name="All">Every run, in the order ties are settled in.</param>
/// <param name="Usable">Those without a dead point, in the same order.</param>
internal sealed record RunOptions(DemandNode Demand, List<PointIndex> All, List<PointIndex> Usable);
