using RoutingRules.Resolving;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Assignment.Problem;

/// <summary>Points that the document gives to demands, which are nobody else's place whether or not the demand gets there.</summary>
internal sealed class GivenPoints
{
    private readonly Dictionary<int, List<Demand>> owners = [];

    /// <summary>Collects them; what the options leave out, or keep from the run it is pinned to, gives its points away.</summary>
    public GivenPoints(AssignmentProblem problem)
    {
        var wishes = new Wishes(problem.Show, problem.Options);
        foreach (var demand in problem.Demands)
        {
            var node = demand.Node;
            if (wishes.IsLeftOut(node) || (node.IsPinned && node.Allowed.Count > 0 && wishes.IsAvoided(node, node.Allowed[0])))
            {
                continue;
            }

            foreach (var run in NamedRuns.Of(problem.Show.Graph, node))
            {
                Add(demand, run);
            }
        }
    }

    /// <summary>Demands that a point of a run is given to, other than one that may stand there because it is pinned itself; in demand order.</summary>
    public IEnumerable<Demand> Owners(Demand demand, int first) =>
        demand.Node.IsPinned || owners.Count == 0
            ? []
            : Enumerable.Range(first, demand.Node.Width).SelectMany(point => owners.GetValueOrDefault(point, [])).Distinct().OrderBy(owner => owner.Index);

    private void Add(Demand demand, PointIndex run)
    {
        for (var point = run.Value; point < run.Value + demand.Node.Width; point++)
        {
            if (!owners.TryGetValue(point, out var list))
            {
                owners.Add(point, list = []);
            }

            list.Add(demand);
        }
    }
}
