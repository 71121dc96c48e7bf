using RoutingRules.Fixing;
using RoutingRules.Model;

namespace RoutingRules.Planning.LineChecks;

/// <summary>A show with what a line check found in it.</summary>
public sealed record LineCheckRecord
{
    /// <summary>The show with the results; as it was when any of them cannot be recorded.</summary>
    public required Show Show { get; init; }

    /// <summary>The edits that make it, one after the other.</summary>
    public required ValueList<ShowEdit> Edits { get; init; }

    /// <summary>The results, in the order they were given.</summary>
    public required ValueList<RecordedResult> Results { get; init; }

    /// <summary>What keeps results from being recorded; nothing is recorded then.</summary>
    public required ValueList<LineCheckProblem> Problems { get; init; }

    /// <summary>
    /// The names of the feeds and lines that name a connector which does not work, in order: those that let go of it and may stand elsewhere on the device,
    /// where that was asked for, else those that still do.
    /// </summary>
    public required ValueList<string> AtDead { get; init; }

    /// <summary>True when those let go.</summary>
    public required bool AreFreed { get; init; }

    /// <summary>
    /// The names of the feeds and lines that were served and are not now, or stand at a connector that does not work, in the order of the
    /// demands.
    /// </summary>
    public required ValueList<string> ToAssign { get; init; }
}
