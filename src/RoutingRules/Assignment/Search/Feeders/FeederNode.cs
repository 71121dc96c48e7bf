namespace RoutingRules.Assignment.Search.Feeders;

/// <summary>A stage of the search for senders: some units decided, the rest open.</summary>
/// <param name="Decided">For each unit the position of the set of senders that feeds it; -1 for an open one.</param>
/// <param name="Chosen">For each unit the set that looked best when the bound was found.</param>
/// <param name="Prices">The prices with the best bound.</param>
/// <param name="Bound">What can be placed at most.</param>
/// <param name="Doubtful">The open unit to decide next; -1 when there is none.</param>
internal sealed record FeederNode(int[] Decided, int[] Chosen, long[] Prices, long Bound, int Doubtful);
