namespace RoutingRules.Planning.Losses;

/// <summary>Finds every smallest set of failures up to a size.</summary>
/// <remarks>
/// A set that silences must hold something that a living way needs; so only those are tried, one after the other, until nothing lives. That misses none: any
/// part of such a set leaves a way alive, and the next member must be among what that way needs.
/// </remarks>
internal sealed class CutSearch(FailureModel model, LossUnits units)
{
    /// <summary>Sets in ascending order that silence all of some deliveries, none of which holds another; small ones first, then by members.</summary>
    public List<int[]> Find(IReadOnlyList<int> deliveries, int size)
    {
        var found = new List<int[]>();
        if (deliveries.Count > 0)
        {
            Try([], deliveries, size, found, []);
        }

        found.Sort(Compare);
        var smallest = new List<int[]>();
        foreach (var set in found)
        {
            if (!smallest.Exists(known => known.All(unit => Array.BinarySearch(set, unit) >= 0)))
            {
                smallest.Add(set);
            }
        }

        return smallest;
    }

    public static int Compare(int[] one, int[] other)
    {
        var order = one.Length.CompareTo(other.Length);
        for (var i = 0; order == 0 && i < one.Length; i++)
        {
            order = one[i].CompareTo(other[i]);
        }

        return order;
    }

    private void Try(int[] chosen, IReadOnlyList<int> deliveries, int size, List<int[]> found, HashSet<string> tried)
    {
        if (!tried.Add(string.Join(' ', chosen)))
        {
            return;
        }

        var lost = units.SetOf(chosen);
        foreach (var delivery in deliveries)
        {
            var ends = model.Deliveries[delivery].Ends;
            if (!ends.All(end => model.Sounds(end, lost)))
            {
                continue;
            }

            if (chosen.Length < size)
            {
                foreach (var unit in units.Needed(ends, lost))
                {
                    if (Array.BinarySearch(chosen, unit) < 0)
                    {
                        Try([.. chosen.Append(unit).Order()], deliveries, size, found, tried);
                    }
                }
            }

            return;
        }

        found.Add(chosen);
    }
}
