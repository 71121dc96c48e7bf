namespace RoutingRules.Tests.Exploring;

/// <summary>Something tried on a generated show.</summary>
internal sealed record Experiment
{
    public required string Name { get; init; }

    /// <summary>Says what is wrong with the case of a seed; nothing when all is well.</summary>
    public required Func<int, IEnumerable<string>> Wrong { get; init; }

    /// <summary>What is wrong with the case of a seed, an exception included.</summary>
    public IReadOnlyList<string> Try(int seed)
    {
        try
        {
            return [.. Wrong(seed)];
        }
#pragma warning disable CA1031 // Whatever is thrown is what was looked for.
        catch (Exception thrown)
#pragma warning restore CA1031
        {
            return [$"{thrown.GetType().Name}: {thrown.Message}"];
        }
    }
}
