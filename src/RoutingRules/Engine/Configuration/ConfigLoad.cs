using RoutingRules.Model;

namespace RoutingRules.Engine.Configuration;

/// <summary>What came of loading a configuration.</summary>
public sealed record ConfigLoad
{
    /// <summary>The configuration; null when there are problems.</summary>
    public LoadedConfig? Config { get; init; }

    /// <summary>The problems of all files, in the order in which the files were read.</summary>
    public ValueList<ConfigProblem> Problems { get; init; }
}
