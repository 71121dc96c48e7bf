using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search.Feeders;

/// <summary>
/// Tells what stays without a place when the senders of all units are given: demands by priority and list order, with moving on of earlier ones.
/// </summary>
internal sealed class FeederTrial(FeederProblem problem)
{
    private readonly int[] order =
    [
        .. Enumerable.Range(0, problem.Demands.Length).OrderBy(at => problem.IsFirm(at) ? -1 : problem.TierOf(at)).ThenBy(problem.WidthOf).ThenBy(at => at),
    ];
    private readonly int[] free = new int[problem.Units.Length];
    private readonly bool[] visited = new bool[problem.Units.Length];
    private readonly List<int>[] inUnit = Array.ConvertAll(problem.Units, _ => new List<int>());
    private int[] feeding = [];

    /// <summary>Steps done, about as long as trying one place each.</summary>
    public long Work { get; private set; }

    /// <summary>How many demands of each tier stay without a place.</summary>
    /// <param name="given">Position of the set of devices that feeds each unit.</param>
    public int[] Lost(int[] given)
    {
        feeding = given;
        for (var unit = 0; unit < free.Length; unit++)
        {
            free[unit] = problem.Units[unit].Points.Count;
            inUnit[unit].Clear();
        }

        var lost = new int[ObjectiveNumbers.Tiers];
        foreach (var at in order)
        {
            Array.Clear(visited);
            if (!Place(at))
            {
                lost[problem.TierOf(at)]++;
            }
        }

        return lost;
    }

    private bool Place(int at)
    {
        foreach (var unit in problem.UnitsOf[at])
        {
            Work++;
            if (!visited[unit] && problem.MayFeed(unit, feeding[unit], at) && free[unit] >= problem.WidthIn(unit, at))
            {
                Put(at, unit);
                return true;
            }
        }

        foreach (var unit in problem.UnitsOf[at])
        {
            if (visited[unit] || !problem.MayFeed(unit, feeding[unit], at))
            {
                continue;
            }

            visited[unit] = true;
            var wanted = problem.WidthIn(unit, at);
            foreach (var other in inUnit[unit].ToArray())
            {
                Work++;
                if (problem.UnitsOf[other].Length == 1 || free[unit] + problem.WidthIn(unit, other) < wanted)
                {
                    continue;
                }

                Take(other, unit);
                if (Place(other))
                {
                    if (free[unit] >= wanted)
                    {
                        Put(at, unit);
                        return true;
                    }
                }
                else
                {
                    Put(other, unit);
                }
            }
        }

        return false;
    }

    private void Put(int at, int unit)
    {
        inUnit[unit].Add(at);
        free[unit] -= problem.WidthIn(unit, at);
    }

    private void Take(int at, int unit)
    {
        inUnit[unit].Remove(at);
        free[unit] += problem.WidthIn(unit, at);
    }
}
