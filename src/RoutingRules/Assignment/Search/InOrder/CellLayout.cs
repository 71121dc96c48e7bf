namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Where in the cells of a state each kind begins; the last points taken stand first.</summary>
/// <param name="Blocks">Block in use, by group.</param>
/// <param name="Used">Outputs taken, by group.</param>
/// <param name="Senders">Device that feeds the block in use, by group.</param>
/// <param name="Pools">Sources, by pool.</param>
/// <param name="Memory">What is remembered of single demands.</param>
internal readonly record struct CellLayout(int Blocks, int Used, int Senders, int Pools, int Memory);
