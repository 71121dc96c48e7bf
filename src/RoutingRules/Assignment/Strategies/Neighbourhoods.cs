using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;
using RoutingRules.Assignment.Search.Feeders;

namespace RoutingRules.Assignment.Strategies;

/// <summary>Names sets of demands that are worth placing anew together.</summary>
internal sealed class Neighbourhoods(AssignmentProblem problem, Part part, FeederProblem? feeding)
{
    private readonly NearbyDemands nearby = new(problem, part);

    /// <summary>
    /// Neighbourhoods, each ascending: those of what has no place, port groups, pairs of them, what keeps a wish, sets, groups, runs of the list,
    /// then few demands of a port group for the sake of the wiring.
    /// </summary>
    /// <param name="current">The choices at the time each one is asked for.</param>
    /// <param name="few">Demands to place anew in any order.</param>
    /// <param name="many">Demands to place anew in list order.</param>
    public IEnumerable<(int[] Demands, bool IsWiring)> All(Func<int[]> current, int few, int many)
    {
        foreach (var index in nearby.Movable)
        {
            if (current()[index] == Evaluator.Unplaced || problem.Demands[index].Candidates[current()[index]].Failed > 0)
            {
                foreach (var portGroup in nearby.PortGroupsOf(index))
                {
                    yield return (nearby.Around(index, current(), [portGroup], few), false);
                    yield return (nearby.Around(index, current(), [portGroup], many), false);
                }

                yield return (nearby.Chain(index, current(), few), false);
                yield return (nearby.Chain(index, current(), many), false);
            }
        }

        var portGroups = nearby.Movable.SelectMany(nearby.PortGroupsOf).Distinct().Order().ToArray();
        foreach (var portGroup in portGroups)
        {
            foreach (var piece in Pieces(nearby.In(current(), [portGroup]), few))
            {
                yield return (piece, false);
            }

            yield return (First(nearby.In(current(), [portGroup]), many), false);
            if (nearby.WithWaiting(current(), [portGroup], 2 * many) is { } demands)
            {
                yield return (demands, false);
            }
        }

        foreach (var index in nearby.Movable)
        {
            if (nearby.WishIsKept(index, current()) is { } wanted)
            {
                yield return (NearbyDemands.Sorted([index, .. wanted], few), false);
                yield return (nearby.Chain(index, current(), few), false);
            }
        }

        foreach (var (first, second) in Pairs(portGroups))
        {
            var both = nearby.In(current(), [first, second]);
            yield return (nearby.WithWaiting(current(), [first, second], 2 * many) ?? First(both, many), false);
            foreach (var demands in Pieces(both, few))
            {
                yield return (demands, false);
            }
        }

        foreach (var members in nearby.Movable.Where(index => problem.Demands[index].Set >= 0).GroupBy(index => problem.Demands[index].Set))
        {
            yield return (NearbyDemands.Sorted(members, few), false);
            yield return (nearby.WithNeighbours([.. members], current(), many), false);
        }

        foreach (var members in nearby.Movable.Where(index => problem.Demands[index].Group >= 0).GroupBy(index => problem.Demands[index].Group))
        {
            yield return (NearbyDemands.Sorted(members, few), false);
            yield return (nearby.WithNeighbours([.. members], current(), many), false);
        }

        for (var from = 0; from < nearby.Movable.Length; from += few - 1)
        {
            yield return (nearby.Movable[from..Math.Min(nearby.Movable.Length, from + few)], false);
        }

        for (var from = 0; from < nearby.Movable.Length; from += many / 2)
        {
            yield return (nearby.Movable[from..Math.Min(nearby.Movable.Length, from + many)], false);
        }

        foreach (var portGroup in portGroups)
        {
            foreach (var demands in Pieces(nearby.In(current(), [portGroup]), 3))
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
                    yield return NearbyDemands.Sorted([.. others, .. waiting.OrderBy(index => problem.Demands[index].Tier)], most);
                }
            }
        }
    }

    /// <summary>Pairs of port groups that some demand can choose between.</summary>
    private IEnumerable<(int First, int Second)> Pairs(int[] portGroups)
    {
        var joined = new HashSet<(int, int)>();
        foreach (var index in nearby.Movable)
        {
            var of = nearby.PortGroupsOf(index).Order().ToArray();
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
}
