using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;
using RoutingRules.Assignment.Search.Feeders;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Names sets of demands that are worth placing anew together.</summary>
internal sealed class Neighbourhoods(AssignmentProblem problem, Part part, FeederProblem? feeding)
{
    private readonly int[] movable = Array.FindAll(part.Active, index => part.Choices[index].Length > (part.IsFirm[index] ? 1 : 0));

    /// <summary>
    /// Neighbourhoods, each ascending: those of what has no place, port groups, pairs of them, what keeps a wish, sets, groups, runs of the list,
    /// then few demands of a port group for the sake of the wiring.
    /// </summary>
    /// <param name="current">The choices at the time each one is asked for.</param>
    /// <param name="few">Demands to place anew in any order.</param>
    /// <param name="many">Demands to place anew in list order.</param>
    public IEnumerable<(int[] Demands, bool IsWiring)> All(Func<int[]> current, int few, int many)
    {
        foreach (var index in movable)
        {
            if (current()[index] == Evaluator.Unplaced || problem.Demands[index].Candidates[current()[index]].Failed > 0)
            {
                foreach (var portGroup in PortGroupsOf(index))
                {
                    yield return (Around(index, current(), [portGroup], few), false);
                    yield return (Around(index, current(), [portGroup], many), false);
                }

                yield return (Chain(index, current(), few), false);
                yield return (Chain(index, current(), many), false);
            }
        }

        var portGroups = movable.SelectMany(PortGroupsOf).Distinct().Order().ToArray();
        foreach (var portGroup in portGroups)
        {
            foreach (var piece in Pieces(In(current(), [portGroup]), few))
            {
                yield return (piece, false);
            }

            yield return (First(In(current(), [portGroup]), many), false);
            if (WithWaiting(current(), [portGroup], 2 * many) is { } demands)
            {
                yield return (demands, false);
            }
        }

        foreach (var index in movable)
        {
            if (WishIsKept(index, current()) is { } wanted)
            {
                yield return (Sorted([index, .. wanted], few), false);
                yield return (Chain(index, current(), few), false);
            }
        }

        foreach (var (first, second) in Pairs(portGroups))
        {
            var both = In(current(), [first, second]);
            yield return (WithWaiting(current(), [first, second], 2 * many) ?? First(both, many), false);
            foreach (var demands in Pieces(both, few))
            {
                yield return (demands, false);
            }
        }

        foreach (var members in movable.Where(index => problem.Demands[index].Set >= 0).GroupBy(index => problem.Demands[index].Set))
        {
            yield return (Sorted(members, few), false);
            yield return (WithNeighbours([.. members], current(), many), false);
        }

        foreach (var members in movable.Where(index => problem.Demands[index].Group >= 0).GroupBy(index => problem.Demands[index].Group))
        {
            yield return (Sorted(members, few), false);
            yield return (WithNeighbours([.. members], current(), many), false);
        }

        for (var from = 0; from < movable.Length; from += few - 1)
        {
            yield return (movable[from..Math.Min(movable.Length, from + few)], false);
        }

        for (var from = 0; from < movable.Length; from += many / 2)
        {
            yield return (movable[from..Math.Min(movable.Length, from + many)], false);
        }

        foreach (var portGroup in portGroups)
        {
            foreach (var demands in Pieces(In(current(), [portGroup]), 3))
            {
                yield return (demands, true);
            }
        }
    }

    /// <summary>
    /// For each device that could feed a unit: those whom others feed there, and those without a place whom it could feed there. It takes all of them
    /// together: a first one alone may drive out as much as it brings.
    /// </summary>
    /// <param name="current">The choices at the time each one is asked for.</param>
    /// <param name="most">Demands to place anew at most.</param>
    public IEnumerable<int[]> FedByAnother(Func<int[]> current, int most)
    {
        foreach (var (unit, contested) in feeding?.Units.Index().Where(entry => entry.Item.IsContested) ?? [])
        {
            foreach (var sender in contested.Senders)
            {
                var waiting = feeding!.Waiting(unit, sender, current());
                if (waiting.Length > 0 && feeding.FedByOthers(unit, sender, current()) is { Length: > 0 } others)
                {
                    yield return Sorted([.. others, .. waiting.OrderBy(index => problem.Demands[index].Tier)], most);
                }
            }
        }
    }

    private IEnumerable<int> PortGroupsOf(int index) => part.Choices[index].Select(choice => problem.Demands[index].Candidates[choice].PortGroup).Distinct();

    /// <summary>Movable demands placed in port groups.</summary>
    private int[] In(int[] choices, ReadOnlySpan<int> portGroups)
    {
        var found = new List<int>();
        foreach (var index in movable)
        {
            if (choices[index] >= 0 && portGroups.Contains(problem.Demands[index].Candidates[choices[index]].PortGroup))
            {
                found.Add(index);
            }
        }

        return [.. found];
    }

    /// <summary>Movable demands in port groups with all that are unplaced and could go there; null when none is.</summary>
    private int[]? WithWaiting(int[] choices, int[] portGroups, int most)
    {
        var waiting = Array.FindAll(movable, index => choices[index] == Evaluator.Unplaced && PortGroupsOf(index).Any(group => portGroups.Contains(group)));
        return waiting.Length == 0 ? null : Sorted([.. In(choices, portGroups), .. waiting], most);
    }

    /// <summary>A demand with those in port groups where it might go; the least important and the most mobile first.</summary>
    private int[] Around(int index, int[] choices, ReadOnlySpan<int> portGroups, int most) =>
        Sorted(
            [
                index,
                .. In(choices, portGroups)
                    .Where(other => other != index)
                    .OrderByDescending(other => problem.Demands[other].Tier)
                    .ThenByDescending(other => PortGroupsOf(other).Count())
                    .ThenBy(other => Math.Abs(other - index)),
            ],
            most
        );

    /// <summary>A demand, those in its way, those in their way, and so on.</summary>
    private int[] Chain(int index, int[] choices, int most)
    {
        var claimants = new Dictionary<int, int>();
        foreach (var other in movable)
        {
            for (var i = 0; choices[other] >= 0 && i < problem.Demands[other].Candidates[choices[other]].Claims.Length; i++)
            {
                claimants[problem.Demands[other].Candidates[choices[other]].Claims[i]] = other;
            }
        }

        var found = new List<int> { index };
        for (var i = 0; i < found.Count && found.Count < most; i++)
        {
            // At most two for each port group, so that the chain gets around.
            var perGroup = new Dictionary<int, int>();
            foreach (var choice in part.Choices[found[i]])
            {
                var candidate = problem.Demands[found[i]].Candidates[choice];
                foreach (var point in candidate.Claims)
                {
                    if (
                        claimants.TryGetValue(point, out var other)
                        && !found.Contains(other)
                        && perGroup.GetValueOrDefault(candidate.PortGroup) < 2
                        && found.Count < most
                    )
                    {
                        perGroup[candidate.PortGroup] = perGroup.GetValueOrDefault(candidate.PortGroup) + 1;
                        found.Add(other);
                    }
                }
            }
        }

        return Sorted(found, most);
    }

    /// <summary>Who stands where a demand or its set would rather be; null when it has what it wants.</summary>
    private List<int>? WishIsKept(int index, int[] choices)
    {
        var demand = problem.Demands[index];
        if (choices[index] < 0)
        {
            return null;
        }

        var number = demand.Candidates[choices[index]].Number;
        var wanted = new HashSet<int>();
        if (demand.Preferred > 0 && demand.Preferred != number)
        {
            wanted.Add(demand.Preferred);
        }

        var found = new List<int>();
        foreach (var other in movable)
        {
            if (
                demand.Set >= 0
                && other != index
                && problem.Demands[other].Set == demand.Set
                && choices[other] >= 0
                && problem.Demands[other].Candidates[choices[other]].Number is var theirs
                && theirs != number
            )
            {
                wanted.Add(theirs);
                found.Add(other);
            }
        }

        if (wanted.Count == 0)
        {
            return null;
        }

        var groups = PortGroupsOf(index).ToArray();
        foreach (var other in movable)
        {
            if (
                other != index
                && choices[other] >= 0
                && problem.Demands[other].Candidates[choices[other]] is var candidate
                && groups.Contains(candidate.PortGroup)
                && (wanted.Contains(candidate.Number) || Math.Abs(candidate.Number - number) <= 1)
            )
            {
                found.Add(other);
            }
        }

        return found;
    }

    /// <summary>Members with demands that stand beside one of them, those near in the list first.</summary>
    private int[] WithNeighbours(int[] members, int[] choices, int most)
    {
        var groups = members
            .Where(index => choices[index] >= 0)
            .Select(index => problem.Demands[index].Candidates[choices[index]].PortGroup)
            .Distinct()
            .ToArray();
        return Sorted([.. members, .. In(choices, groups).Except(members).OrderBy(other => members.Min(index => Math.Abs(index - other)))], most);
    }

    /// <summary>Pairs of port groups that some demand can choose between.</summary>
    private IEnumerable<(int First, int Second)> Pairs(int[] portGroups)
    {
        var joined = new HashSet<(int, int)>();
        foreach (var index in movable)
        {
            var of = PortGroupsOf(index).Order().ToArray();
            for (var i = 0; i < of.Length; i++)
            {
                for (var j = i + 1; j < of.Length; j++)
                {
                    joined.Add((of[i], of[j]));
                }
            }
        }

        // Near ones first: after them each pair is further apart.
        return joined.OrderBy(pair => Array.IndexOf(portGroups, pair.Item2) - Array.IndexOf(portGroups, pair.Item1)).ThenBy(pair => pair.Item1);
    }

    private static IEnumerable<int[]> Pieces(int[] demands, int size)
    {
        for (var from = 0; from < demands.Length; from += Math.Max(1, size / 2))
        {
            yield return demands[from..Math.Min(demands.Length, from + size)];
            if (from + size >= demands.Length)
            {
                yield break;
            }
        }
    }

    private static int[] First(int[] demands, int most) => demands.Length > most ? demands[..most] : demands;

    private static int[] Sorted(IEnumerable<int> demands, int most) => [.. demands.Distinct().Take(most).Order()];
}
