using RoutingRules.Rules;

namespace RoutingRules.Engine.Configuration;

/// <summary>What is wrong with a file of a configuration.</summary>
public sealed record ConfigProblem
{
    /// <summary>The file.</summary>
    public required string Path { get; init; }

    /// <summary>What is wrong, with line and column where the text allows it.</summary>
    public required Finding Finding { get; init; }
}
