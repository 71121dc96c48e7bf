using System.Numerics;

namespace RoutingRules.Resolving;

/// <summary>The points each point feeds, laid out in one array: the upstream array turned round.</summary>
/// <remarks>Most points feed nothing. A bit for each tells so at once; only those that feed something have a place in the table of starts.</remarks>
internal sealed class FanOut
{
    private readonly ulong[] feeding;

    /// <summary>For each word of bits how many points before it feed something.</summary>
    private readonly int[] before;

    private readonly int[] starts;
    private readonly int[] fed;

    public FanOut(ReadOnlySpan<int> upstream)
    {
        feeding = new ulong[(upstream.Length + 63) / 64];
        foreach (var from in upstream)
        {
            if (from >= 0)
            {
                feeding[from >> 6] |= 1UL << (from & 63);
            }
        }

        before = new int[feeding.Length];
        var count = 0;
        for (var i = 0; i < feeding.Length; i++)
        {
            before[i] = count;
            count += BitOperations.PopCount(feeding[i]);
        }

        starts = new int[count + 1];
        foreach (var from in upstream)
        {
            if (from >= 0)
            {
                starts[Place(from)]++;
            }
        }

        // Each entry stands for the end of its own points at first; taking the points from the last down moves it to their start.
        for (var i = 1; i < starts.Length; i++)
        {
            starts[i] += starts[i - 1];
        }

        fed = new int[starts[^1]];
        for (var point = upstream.Length - 1; point >= 0; point--)
        {
            if (upstream[point] >= 0)
            {
                fed[--starts[Place(upstream[point])]] = point;
            }
        }
    }

    public ReadOnlySpan<int> Fed(int point)
    {
        if ((feeding[point >> 6] >> (point & 63) & 1) == 0)
        {
            return [];
        }

        var place = Place(point);
        return fed.AsSpan(starts[place], starts[place + 1] - starts[place]);
    }

    /// <summary>How many points before one feed something.</summary>
    private int Place(int point) => before[point >> 6] + BitOperations.PopCount(feeding[point >> 6] & ((1UL << (point & 63)) - 1));
}
