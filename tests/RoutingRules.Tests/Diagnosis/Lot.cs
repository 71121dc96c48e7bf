namespace RoutingRules.Tests.Diagnosis;

/// <summary>Choices drawn from one seed.</summary>
internal sealed class Lot(int seed)
{
    private readonly Random random = new(seed);

    /// <summary>A number between two, both included.</summary>
    public int Roll(int min, int max) => random.Next(min, Math.Max(min, max) + 1);

    public bool Chance(int percent) => random.Next(100) < percent;

    public T Pick<T>(IReadOnlyList<T> values) => values[random.Next(values.Count)];
}
