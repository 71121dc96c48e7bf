namespace RoutingRules.Tests.Assignment;

/// <summary>Choices that depend on a seed alone, on every machine and version.</summary>
/// <remarks>The generator is SplitMix64 (Steele, Lea and Flood, 2014), constants from memory.</remarks>
internal sealed class TinyDice(int seed)
{
    private ulong state = (ulong)seed;

    /// <summary>A number from low to high, both included.</summary>
    public int From(int low, int high)
    {
        var z = state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return low + (int)((z ^ (z >> 31)) % (ulong)(high - low + 1));
    }

    /// <summary>True in so many of a hundred cases.</summary>
    public bool In(int percent) => From(1, 100) <= percent;

    public T Pick<T>(IReadOnlyList<T> items) => items[From(0, items.Count - 1)];

    public void Shuffle<T>(T[] items)
    {
        for (var i = items.Length - 1; i > 0; i--)
        {
            var j = From(0, i);
            (items[i], items[j]) = (items[j], items[i]);
        }
    }
}
