using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Shifts a displaced run back to its places, where the source of each point is chosen on its own.</summary>
internal sealed class ShiftRun : FixProvider
{
    public override string RuleId => "RR2011";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var (wanted, width) = context.RunOf(finding, "wanted");
        var (actual, arriving) = context.RunOf(finding, "actual");
        var graph = context.Resolved.Graph;
        var moved = new SortedDictionary<PointIndex, PointIndex>();
        var left = new SortedSet<PointIndex>();
        for (var position = 0; position < width && width == arriving; position++)
        {
            var to = RouteEdits.Chooser(graph, wanted + position);
            var from = RouteEdits.Chooser(graph, actual + position);
            if (to.IsNone || from.IsNone || !RouteEdits.IsFree(graph, graph.Upstream(from), to) || !moved.TryAdd(to, graph.Upstream(from)))
            {
                return [];
            }

            left.Add(from);
        }

        foreach (var point in left)
        {
            moved.TryAdd(point, PointIndex.None);
        }

        return moved.Count == 0
            ? []
            :
            [
                Fix.Of(
                    $"Shift what arrives at {finding.IdOf("actual")} to {finding.IdOf("wanted")}",
                    FixSafety.Unsafe,
                    RouteEdits.Set(context, moved),
                    "Mute all outputs of the run, and check one at low level before the others."
                ),
            ];
    }
}
