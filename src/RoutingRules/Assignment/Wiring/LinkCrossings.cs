using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Which streams of a wiring in the making pass which directions of links, and what that takes of them.</summary>
internal sealed class LinkCrossings
{
    private readonly LinkRoom links;
    private readonly ChangeTrail trail;
    private readonly int[] crossings;
    private readonly long[] loads;

    public LinkCrossings(AssignmentProblem problem, ChangeTrail trail)
    {
        this.trail = trail;
        links = problem.Links;
        crossings = links.Count == 0 ? [] : new int[problem.TransmitBlocks.Length * links.Count];
        loads = [.. links.Staying];
        foreach (var block in problem.TransmitBlocks)
        {
            for (var at = 0; block.IsKept && at < links.Count; at++)
            {
                var unit = links.UnitOf(block.Id);
                crossings[(unit * links.Count) + at] = links.IsCrossedByStaying(unit, at) ? 1 : 0;
            }
        }
    }

    /// <summary>Takes the stream of a block on to one more receiver.</summary>
    /// <returns>False when a link it did not pass before then carries more than may be reserved.</returns>
    public bool Cross(TransmitBlock from, int on, int receiver)
    {
        if (links.Count == 0)
        {
            return true;
        }

        var fits = true;
        var unit = links.UnitOf(from.Id);
        foreach (var at in links.Crossed(on, from.Device, receiver))
        {
            var index = (unit * links.Count) + at;
            if (crossings[index] == 0)
            {
                trail.Set(loads, at, loads[at] + links.Rate(unit, at));
                fits &= loads[at] <= links.Most[at];
            }

            trail.Set(crossings, index, crossings[index] + 1);
        }

        return fits;
    }
}
