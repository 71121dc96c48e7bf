namespace RoutingRules.Resolving;

/// <summary>The points each point feeds, laid out in one array: the upstream array turned round.</summary>
internal sealed class FanOut
{
    private readonly int[] starts;
    private readonly int[] fed;

    public FanOut(ReadOnlySpan<int> upstream)
    {
        starts = new int[upstream.Length + 1];
        foreach (var from in upstream)
        {
            if (from >= 0)
            {
                starts[from]++;
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
                fed[--starts[upstream[point]]] = point;
            }
        }
    }

    public ReadOnlySpan<int> Fed(int point) => fed.AsSpan(starts[point], starts[point + 1] - starts[point]);
}
