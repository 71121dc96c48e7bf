using FsCheck;
using FsCheck.Fluent;

namespace RoutingRules.Testing;

/// <summary>Choices drawn from one seed, for makers that build a whole value in one go.</summary>
internal sealed class Dice(int seed, int size)
{
    private readonly Random random = new(seed);

    /// <summary>FsCheck's size, 0 to about 100: how large values may be.</summary>
    public int Size { get; } = size;

    /// <summary>A generator that makes values from dice.</summary>
    public static Gen<T> Throw<T>(Func<Dice, T> make) => Gen.Sized(size => Gen.Choose(0, int.MaxValue - 1).Select(seed => make(new Dice(seed, size))));

    /// <summary>A number between two, both included.</summary>
    public int Roll(int min, int max) => random.Next(min, Math.Max(min, max) + 1);

    /// <summary>A number between two, both included, whose upper end grows with the size.</summary>
    public int Grow(int min, int max) => Roll(min, Math.Min(max, min + (Size / 8)));

    public bool Chance(int percent) => random.Next(100) < percent;

    public T Pick<T>(IReadOnlyList<T> values) => values[random.Next(values.Count)];

    /// <summary>The values in another order.</summary>
    public T[] Shuffle<T>(IEnumerable<T> values)
    {
        var shuffled = values.ToArray();
        random.Shuffle(shuffled);
        return shuffled;
    }
}
