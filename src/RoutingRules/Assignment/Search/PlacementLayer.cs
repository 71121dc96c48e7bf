namespace RoutingRules.Assignment.Search;

/// <summary>The options of one depth of <see cref="PlacementSearch"/>, kept between searches.</summary>
internal sealed class PlacementLayer
{
    public int[] Choices = new int[64];
    public long[][] Costs = [.. Enumerable.Range(0, 64).Select(_ => new long[PlacementTally.KeyLength])];
    public int Count;

    public void Add(int choice)
    {
        if (Count == Choices.Length)
        {
            Array.Resize(ref Choices, 2 * Count);
            Array.Resize(ref Costs, 2 * Count);
            for (var i = Count; i < Costs.Length; i++)
            {
                Costs[i] = new long[PlacementTally.KeyLength];
            }
        }

        Choices[Count] = choice;
        Array.Clear(Costs[Count++]);
    }

    public void Sort()
    {
        for (var i = 1; i < Count; i++)
        {
            for (var at = i; at > 0 && Costs[at].AsSpan().SequenceCompareTo(Costs[at - 1]) < 0; at--)
            {
                (Costs[at], Costs[at - 1]) = (Costs[at - 1], Costs[at]);
                (Choices[at], Choices[at - 1]) = (Choices[at - 1], Choices[at]);
            }
        }
    }
}
