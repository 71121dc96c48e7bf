using System.Numerics;

namespace RoutingRules.Verification;

/// <summary>Matches rows to slots, each at most once, with the largest sum of weights.</summary>
internal static class WeightedMatching
{
    /// <summary>For each row its slot, or -1.</summary>
    /// <param name="weights">For each row the slots that may serve it with weights above 0.</param>
    /// <param name="slots">How many slots there are.</param>
    public static int[] Solve(IReadOnlyList<Dictionary<int, BigInteger>> weights, int slots)
    {
        var slotOf = Enumerable.Repeat(-1, weights.Count).ToArray();
        var rowOf = Enumerable.Repeat(-1, slots).ToArray();

        // Each round adds one pair along the most profitable alternating path, so after k rounds the matching is the best one of k pairs.
        while (Improve(weights, slotOf, rowOf)) { }

        return slotOf;
    }

    private static bool Improve(IReadOnlyList<Dictionary<int, BigInteger>> weights, int[] slotOf, int[] rowOf)
    {
        var gain = new BigInteger?[rowOf.Length];
        var from = new int[rowOf.Length];
        for (var row = 0; row < weights.Count; row++)
        {
            if (slotOf[row] < 0)
                Relax(row, BigInteger.Zero);
        }

        for (var round = 0; round < rowOf.Length; round++)
        {
            var changed = false;
            for (var slot = 0; slot < rowOf.Length; slot++)
            {
                if (gain[slot] is { } value && rowOf[slot] >= 0)
                    changed |= Relax(rowOf[slot], value - weights[rowOf[slot]][slot]);
            }

            if (!changed)
                break;
        }

        var end = -1;
        for (var slot = 0; slot < rowOf.Length; slot++)
        {
            if (rowOf[slot] < 0 && gain[slot] > (end < 0 ? BigInteger.Zero : gain[end]))
                end = slot;
        }

        if (end < 0)
            return false;

        while (end >= 0)
        {
            var row = from[end];
            var before = slotOf[row];
            (slotOf[row], rowOf[end]) = (end, row);
            end = before;
        }

        return true;

        bool Relax(int row, BigInteger at)
        {
            var changed = false;
            foreach (var (slot, weight) in weights[row])
            {
                if (slotOf[row] != slot && (gain[slot] is not { } known || at + weight > known))
                {
                    (gain[slot], from[slot]) = (at + weight, row);
                    changed = true;
                }
            }

            return changed;
        }
    }
}
