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
                starts[from + 1]++;
            }
        }

        for (var i = 1; i < starts.Length; i++)
        {
            starts[i] += starts[i - 1];
        }

        fed = new int[starts[^1]];
        var next = starts.AsSpan(0, upstream.Length).ToArray();
        for (var point = 0; point < upstream.Length; point++)
        {
            if (upstream[point] >= 0)
            {
                fed[next[upstream[point]]++] = point;
            }
        }
    }

    public ReadOnlySpan<int> Fed(int point) => fed.AsSpan(starts[point], starts[point + 1] - starts[point]);
}
