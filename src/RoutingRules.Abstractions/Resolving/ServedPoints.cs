namespace RoutingRules.Resolving;

/// <summary>Which demand each point serves in the patch as it stands; of several at one point the first.</summary>
internal sealed class ServedPoints
{
    /// <summary>The points served, in ascending order, each with the positions of its demands, the first one first.</summary>
    private readonly (int Point, int Demand)[] served;

    private readonly IReadOnlyList<DemandNode> demands;

    public ServedPoints(IReadOnlyList<DemandNode> demands)
    {
        this.demands = demands;
        var count = 0;
        for (var i = 0; i < demands.Count; i++)
        {
            count += demands[i].Existing.IsNone ? 0 : demands[i].Width;
        }

        served = new (int Point, int Demand)[count];
        for (var i = demands.Count - 1; i >= 0; i--)
        {
            for (var position = 0; !demands[i].Existing.IsNone && position < demands[i].Width; position++)
            {
                served[--count] = (demands[i].Existing.Value + position, i);
            }
        }

        Array.Sort(served);
    }

    /// <summary>The first demand that a point serves, or null.</summary>
    public DemandNode? DemandAt(PointIndex point)
    {
        var low = 0;
        var high = served.Length;
        while (low < high)
        {
            var middle = (low + high) >>> 1;
            (low, high) = served[middle].Point < point.Value ? (middle + 1, high) : (low, middle);
        }

        return low < served.Length && served[low].Point == point.Value ? demands[served[low].Demand] : null;
    }
}
