namespace RoutingRules.Assignment;

/// <summary>A way to search for placements. It proposes; the engine settles pins and holds, wires, scores and writes what was proposed.</summary>
/// <remarks>
/// One instance serves every assignment of an engine, also at once: keep nothing between calls. The same part must give the same answer, so use
/// no clock and no randomness without a fixed seed.
/// </remarks>
public abstract class AssignmentStrategy
{
    /// <summary>The name that options and configurations use, such as <c>exact</c>.</summary>
    public abstract string Name { get; }

    /// <summary>A title of a few words for people.</summary>
    public abstract string Title { get; }

    /// <summary>Searches one part of a show: demands that have nothing to do with the rest.</summary>
    /// <param name="part">The part.</param>
    /// <param name="cancellation">Stops the search; answer with the best found so far.</param>
    /// <returns>The proposal, or null when none was found; the engine then searches with its own default strategy, without any proof.</returns>
    /// <exception cref="UnsupportedAssignmentException">The part uses something that the strategy cannot take into account.</exception>
    public abstract StrategyAnswer? Search(AssignmentPart part, CancellationToken cancellation);
}
