using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Finds demands that have to do with one another: that stand in each other's way, beside each other or where another would rather be.</summary>
internal sealed class NearbyDemands(AssignmentProblem problem, Part part)
{
    /// <summary>Demands that could stand elsewhere or be left out, ascending.</summary>
    public int[] Movable { get; } = Array.FindAll(part.Active, index => part.Choices[index].Length > (part.IsFirm[index] ? 1 : 0));

    public IEnumerable<int> PortGroupsOf(int index) => part.Choices[index].Select(choice => problem.Demands[index].Candidates[choice].PortGroup).Distinct();

    /// <summary>Movable demands placed in port groups.</summary>
    public int[] In(int[] choices, ReadOnlySpan<int> portGroups)
    {
        var found = new List<int>();
        foreach (var index in Movable)
        {
            if (choices[index] >= 0 && portGroups.Contains(problem.Demands[index].Candidates[choices[index]].PortGroup))
            {
                found.Add(index);
            }
        }

        return [.. found];
    }

    /// <summary>Movable demands in port groups with all that are unplaced and could go there; null when none is.</summary>
    public int[]? WithWaiting(int[] choices, int[] portGroups, int most)
    {
        var waiting = Array.FindAll(Movable, index => choices[index] == Evaluator.Unplaced && PortGroupsOf(index).Any(group => portGroups.Contains(group)));
        return waiting.Length == 0 ? null : Sorted([.. In(choices, portGroups), .. waiting], most);
    }

    /// <summary>A demand with those in port groups where it might go; the least important and the most mobile first.</summary>
    public int[] Around(int index, int[] choices, ReadOnlySpan<int> portGroups, int most) =>
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
    public int[] Chain(int index, int[] choices, int most)
    {
        var claimants = new Dictionary<int, int>();
        foreach (var other in Movable)
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
    public List<int>? WishIsKept(int index, int[] choices)
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
        foreach (var other in Movable)
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
        foreach (var other in Movable)
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
    public int[] WithNeighbours(int[] members, int[] choices, int most)
    {
        var groups = members
            .Where(index => choices[index] >= 0)
            .Select(index => problem.Demands[index].Candidates[choices[index]].PortGroup)
            .Distinct()
            .ToArray();
        return Sorted([.. members, .. In(choices, groups).Except(members).OrderBy(other => members.Min(index => Math.Abs(index - other)))], most);
    }

    public static int[] Sorted(IEnumerable<int> demands, int most) => [.. demands.Distinct().Take(most).Order()];
}
