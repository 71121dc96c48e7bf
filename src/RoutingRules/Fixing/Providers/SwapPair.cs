using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Exchanges the sources of the two points of a pair, where each is chosen on its own.</summary>
internal sealed class SwapPair : FixProvider
{
    public override string RuleId => "RR3004";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var (left, width) = context.RunOf(finding, "points");
        if (width != 2)
        {
            return [];
        }

        var graph = context.Resolved.Graph;
        var first = RouteEdits.Chooser(graph, left);
        var second = RouteEdits.Chooser(graph, left + 1);
        if (first.IsNone || second.IsNone || first == second)
        {
            return [];
        }

        var sources = new SortedDictionary<PointIndex, PointIndex> { [first] = graph.Upstream(second), [second] = graph.Upstream(first) };
        return !RouteEdits.IsFree(graph, sources[first], first) || !RouteEdits.IsFree(graph, sources[second], second)
            ? []
            :
            [
                Fix.Of(
                    $"Exchange the sources of {graph.Address(first)} and {graph.Address(second)}, so that {finding.IdOf("points")} gets left first",
                    FixSafety.Unsafe,
                    RouteEdits.Set(context, sources),
                    "Mute both sides before the exchange and listen to one at a time."
                ),
            ];
    }
}
