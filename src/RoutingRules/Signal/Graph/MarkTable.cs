using RoutingRules.Resolving;

namespace RoutingRules.Signal.Graph;

/// <summary>Which points are marked, for many questions.</summary>
internal sealed class MarkTable
{
    private readonly ulong[] bits = [];

    /// <summary>A table of marks.</summary>
    /// <param name="pointCount">How many points the graph has.</param>
    /// <param name="marks">The marks.</param>
    public MarkTable(int pointCount, IReadOnlyList<MarkedPoint> marks)
    {
        if (marks.Count > 0)
        {
            bits = new ulong[(pointCount + 63) / 64];
        }

        for (var i = 0; i < marks.Count; i++)
        {
            for (var point = marks[i].First.Value; point < marks[i].First.Value + marks[i].Width; point++)
            {
                bits[point >> 6] |= 1UL << (point & 63);
            }
        }
    }

    /// <summary>True when a point of a run is marked.</summary>
    public bool Touches(PointIndex first, int width)
    {
        for (var point = first.Value; bits.Length > 0 && point < first.Value + width; point++)
        {
            if ((bits[point >> 6] >> (point & 63) & 1) != 0)
            {
                return true;
            }
        }

        return false;
    }
}
