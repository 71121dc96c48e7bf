namespace RoutingRules.Assignment.Search.Feeders;

/// <summary>Points that few devices can feed at a time: those behind one receive block, or the freely routed ones of a port group.</summary>
internal sealed class FeederUnit
{
    private const int MostFeedings = 64;

    /// <summary>Points that demands can take here.</summary>
    public HashSet<int> Points { get; } = [];

    /// <summary>How many devices can feed it at a time.</summary>
    public required int Limit { get; init; }

    /// <summary>Devices that demands want to feed it from, ascending.</summary>
    public SortedSet<int> Senders { get; } = [];

    /// <summary>Demands that could stand here, by position among those of the problem, with the fewest points they take here.</summary>
    public SortedDictionary<int, int> Widths { get; } = [];

    /// <summary>Those of them that come from the device itself and need nobody to feed them.</summary>
    public HashSet<int> Locals { get; } = [];

    /// <summary>True when more devices want to feed it than can.</summary>
    public bool IsContested => Senders.Count > Limit;

    /// <summary>All sets of as many devices as can feed it; one empty set where all may, or where there are too many sets to try.</summary>
    public int[][] Feedings()
    {
        if (!IsContested || Limit == 0)
        {
            return
            [
                [],
            ];
        }

        var found = new List<int[]> { Array.Empty<int>() };
        for (var size = 0; size < Limit; size++)
        {
            found = [.. found.SelectMany(set => Senders.Where(sender => set.Length == 0 || sender > set[^1]).Select(sender => (int[])[.. set, sender]))];
            if (found.Count > MostFeedings)
            {
                return
                [
                    [],
                ];
            }
        }

        return [.. found];
    }
}
