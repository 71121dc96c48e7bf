using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Searches one part: with all its pins and holds if that is possible, else with as few giving way as can be.</summary>
internal sealed class SubProblemSolver(AssignmentProblem problem, Evaluator evaluator, PinsAndHolds firm, int[] active, StrategySearch search)
{
    /// <summary>Sets of holds of one size that are tried before holds are given up one by one.</summary>
    private const int MaxSubsets = 300;

    /// <summary>Searches.</summary>
    /// <param name="budget">Evaluator work to spend on each attempt.</param>
    public SearchResult Solve(long budget)
    {
        var holds = firm.Holds.Where(index => active.Contains(index)).ToArray();
        while (true)
        {
            // Pins come before holds: where they cannot stand by themselves, no hold that yields helps.
            Array.ForEach(holds, firm.Release);
            if (firm.MayStand(active))
            {
                Array.ForEach(holds, firm.Hold);
                if ((Attempt(budget) ?? WithFewestYielding(holds, budget)) is { } found)
                {
                    return found;
                }

                Array.ForEach(holds, firm.Release);
            }

            foreach (var index in firm.LeftOutOf(SmallestConflict(budget)))
            {
                firm.Drop(index);
            }
        }
    }

    private SearchResult? Attempt(long budget)
    {
        if (!firm.MayStand(active))
        {
            return null;
        }

        while (true)
        {
            var part = new Part
            {
                Active = active,
                Choices = firm.Choices,
                IsFirm = firm.IsFirm,
            };
            var found = search.Run(part, budget);
            if (found is null || !firm.TakeBack(active, found.Choices))
            {
                return found is null ? null : NoWorseThanNow(part, found);
            }
        }
    }

    /// <summary>What was found, unless what stands in the input is better; what is proven of either holds for both.</summary>
    private SearchResult NoWorseThanNow(Part part, SearchResult found) =>
        !found.IsProven && StandingState.Of(problem, evaluator, part) is { } now && now.Score.CompareTo(found.Score, evaluator.Order) < 0
            ? now with
            {
                ProvenNumbers = found.ProvenNumbers,
            }
            : found;

    /// <summary>The best result with the smallest number of holds given up; null when even none of them helps.</summary>
    private SearchResult? WithFewestYielding(int[] holds, long budget)
    {
        var byWorth = holds.OrderByDescending(index => problem.Demands[index].Tier).ThenByDescending(index => index).ToArray();
        for (var size = 1; size <= holds.Length && Count(holds.Length, size) <= MaxSubsets; size++)
        {
            SearchResult? best = null;
            int[]? bestSet = null;
            foreach (var yielding in Subsets(byWorth, size, 0))
            {
                yielding.ForEach(firm.Release);
                var found = Attempt(budget);
                if (found is not null && (best is null || found.Score.CompareTo(best.Score, evaluator.Order) < 0))
                {
                    best = found;
                    bestSet = [.. yielding];
                }

                yielding.ForEach(firm.Hold);
            }

            if (bestSet is not null)
            {
                Yield(bestSet);
                return best;
            }
        }

        return OneByOne(byWorth, budget);
    }

    private SearchResult? OneByOne(int[] byWorth, long budget)
    {
        for (var count = 1; count <= byWorth.Length; count++)
        {
            firm.Release(byWorth[count - 1]);
            if (Attempt(budget) is { } found)
            {
                Yield(byWorth[..count]);
                return found;
            }
        }

        return null;
    }

    private void Yield(int[] holds)
    {
        foreach (var index in holds)
        {
            firm.Release(index);
            firm.Yielded.Add(index);
        }

        firm.Yielded.Sort();
    }

    /// <summary>
    /// Pins of the part that cannot stand together, and could without any one of them, by themselves or beside what others bring. Holds are released.
    /// </summary>
    private List<int> SmallestConflict(long budget)
    {
        var pins = active.Where(index => firm.IsFirm[index] && problem.Demands[index].IsPinned).ToArray();
        var conflict = firm.Narrowed(pins);
        Array.ForEach(pins, firm.Drop);
        Array.ForEach(conflict, firm.Pin);
        foreach (var index in conflict)
        {
            firm.Drop(index);
            if (firm.StandAlone(active) || Attempt(budget) is not null)
            {
                firm.Pin(index);
            }
        }

        conflict = Array.FindAll(conflict, index => firm.IsFirm[index]);
        Array.ForEach(pins, firm.Pin);
        return [.. conflict];
    }

    private static double Count(int items, int size)
    {
        var count = 1.0;
        for (var i = 0; i < size; i++)
        {
            count = count * (items - i) / (i + 1);
        }

        return count;
    }

    private static IEnumerable<List<int>> Subsets(int[] items, int size, int from)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (var i = from; i + size <= items.Length; i++)
        {
            foreach (var rest in Subsets(items, size - 1, i + 1))
            {
                yield return [items[i], .. rest];
            }
        }
    }
}
