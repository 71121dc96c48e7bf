namespace RoutingRules.Assignment.Search;

/// <summary>How hard a search for better places tries.</summary>
/// <param name="Nodes">Partial placements to look at, at most.</param>
/// <param name="Leaves">Whole placements to score, at most.</param>
/// <param name="Width">Places to try for a demand at each step, cheapest first.</param>
/// <param name="Levels">Numbers of the key that must get better.</param>
/// <param name="TriesEqual">True when placements that are equal on those are scored too.</param>
/// <param name="WiringBudget">Wiring options to try for a placement.</param>
/// <param name="WorkLimit">Evaluator work after which it stops.</param>
internal readonly record struct SearchEffort(int Nodes, int Leaves, int Width, int Levels, bool TriesEqual, long WiringBudget, long WorkLimit);
