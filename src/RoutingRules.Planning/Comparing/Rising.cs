namespace RoutingRules.Planning.Comparing;

/// <summary>Finds which elements of a list kept their order.</summary>
internal static class Rising
{
    /// <summary>The elements of a longest rising part, so that as few as possible count as moved; of equally long ones the one that ends lowest.</summary>
    public static HashSet<int> Longest(IEnumerable<int> numbers)
    {
        var values = numbers.ToArray();
        var before = new int[values.Length];
        var ends = new List<int>();
        for (var i = 0; i < values.Length; i++)
        {
            var low = 0;
            var high = ends.Count;
            while (low < high)
            {
                var middle = (low + high) / 2;
                if (values[ends[middle]] < values[i])
                {
                    low = middle + 1;
                }
                else
                {
                    high = middle;
                }
            }

            before[i] = low == 0 ? -1 : ends[low - 1];
            if (low == ends.Count)
            {
                ends.Add(i);
            }
            else
            {
                ends[low] = i;
            }
        }

        var kept = new HashSet<int>();
        for (var i = ends.Count == 0 ? -1 : ends[^1]; i >= 0; i = before[i])
        {
            kept.Add(values[i]);
        }

        return kept;
    }
}
