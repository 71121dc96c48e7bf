using RoutingRules.Tests.Assignment;

namespace RoutingRules.Tests.Exploring;

/// <summary>Something tried on a generated show.</summary>
internal sealed record Experiment
{
    public required string Name { get; init; }

    /// <summary>The case of a seed.</summary>
    public required Func<int, TinyInstance> Make { get; init; }

    /// <summary>Says what is wrong with a case; nothing when all is well.</summary>
    public required Func<TinyInstance, IEnumerable<string>> Wrong { get; init; }

    /// <summary>What is wrong with the case of a seed, an exception included.</summary>
    public IReadOnlyList<string> Try(int seed)
    {
        try
        {
            return [.. Wrong(Make(seed))];
        }
#pragma warning disable CA1031 // Whatever is thrown is what was looked for.
        catch (Exception thrown)
#pragma warning restore CA1031
        {
            return [$"{thrown.GetType().Name}: {thrown.Message}"];
        }
    }
}
