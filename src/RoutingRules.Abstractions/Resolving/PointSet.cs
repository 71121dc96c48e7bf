namespace RoutingRules.Resolving;

/// <summary>A set of points of one graph, a bit for each.</summary>
internal sealed class PointSet(int pointCount)
{
    private readonly ulong[] bits = new ulong[(pointCount + 63) / 64];

    /// <summary>Adds a point.</summary>
    public void Add(int point) => bits[point >> 6] |= 1UL << (point & 63);

    /// <summary>Adds the points of a run; nothing for none.</summary>
    public void Add(PointIndex first, int width)
    {
        for (var position = 0; !first.IsNone && position < width; position++)
        {
            Add(first.Value + position);
        }
    }

    /// <summary>True for a point of the set; false for none.</summary>
    public bool Contains(PointIndex point) => Contains(point.Value);

    /// <summary>True for a point of the set; false for none.</summary>
    public bool Contains(int point) => point >= 0 && (bits[point >> 6] >> (point & 63) & 1) != 0;

    /// <summary>The points in ascending order.</summary>
    public List<PointIndex> ToList()
    {
        var points = new List<PointIndex>();
        for (var i = 0; i < bits.Length; i++)
        {
            for (var left = bits[i]; left != 0; left &= left - 1)
            {
                points.Add(new PointIndex((i * 64) + System.Numerics.BitOperations.TrailingZeroCount(left)));
            }
        }

        return points;
    }
}
