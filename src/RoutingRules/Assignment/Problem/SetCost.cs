namespace RoutingRules.Assignment.Problem;

/// <summary>What members of a set cost that stand on different devices with different numbers.</summary>
internal static class SetCost
{
    /// <summary>Adds what two members of a set cost where they stand.</summary>
    public static void Add(int[] cost, Demand demand, int device, int number, Demand other, int otherDevice, int otherNumber)
    {
        if (
            demand.Set >= 0
            && other.Set == demand.Set
            && other.Part != demand.Part
            && other.Node.Entry == demand.Node.Entry
            && otherDevice != device
            && otherNumber != number
        )
        {
            cost[ObjectiveNumbers.Sets]++;
            cost[ObjectiveNumbers.Distance] += Math.Abs(otherNumber - number);
        }
    }
}
