namespace RoutingRules.Assignment.Wiring;

/// <summary>Compares rows of cells by value.</summary>
internal sealed class CellComparer : IEqualityComparer<int[]>
{
    public static CellComparer Instance { get; } = new();

    public bool Equals(int[]? x, int[]? y) => x.AsSpan().SequenceEqual(y);

    public int GetHashCode(int[] obj)
    {
        var hash = 17u;
        foreach (var cell in obj)
        {
            hash = (hash * 0x01000193) ^ (uint)cell ^ (hash >> 15);
        }

        return (int)hash;
    }
}
