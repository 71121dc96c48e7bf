namespace RoutingRules.Resolving;

/// <summary>Something a profile says that cannot be.</summary>
public sealed record ProfileProblem
{
    /// <summary>The place in the profile as a JSON Pointer.</summary>
    public required string Pointer { get; init; }

    /// <summary>What is wrong and what to write instead.</summary>
    public required string Message { get; init; }
}
