namespace RoutingRules.Planning.LineChecks;

/// <summary>Why a result of a line check cannot be recorded.</summary>
public sealed record LineCheckProblem
{
    /// <summary>The position of the result in what was given, from 0.</summary>
    public required int Index { get; init; }

    /// <summary>What is wrong, and what to write instead.</summary>
    public required string Text { get; init; }
}
