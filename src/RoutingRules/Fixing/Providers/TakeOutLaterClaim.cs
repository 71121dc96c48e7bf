using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Takes the later of two claims on a sink out. Safe where both bring the same; else it is for a person to say which one is meant.</summary>
internal sealed class TakeOutLaterClaim : FixProvider
{
    public override string RuleId => "RR2001";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var sinks = context.RunOf(finding, "sink");
        var conflicts = context.Resolved.Conflicts.Where(conflict => sinks.Has(conflict.Sink)).ToList();
        var routes = new HashSet<(int Route, PointIndex Sink)>();
        var isSame = true;
        foreach (var conflict in conflicts)
        {
            if (conflict.OtherKind != HopKind.Route)
            {
                return [Manual(finding)];
            }

            routes.Add((conflict.OtherIndex, conflict.Sink));
            isSame &= conflict.OtherFrom == context.Resolved.Graph.Upstream(conflict.Sink);
        }

        var edits = RouteEdits.TakeOut(context, (route, position) => routes.Contains((route.Index, route.To + position)));
        if (edits.Count == 0)
        {
            return [Manual(finding)];
        }

        var at = finding.IdOf("sink");
        return isSame
            ? [Fix.Of($"Take out the second route to {at}; the first one says the same", FixSafety.Safe, edits.ToValueList())]
            :
            [
                Fix.Of(
                    $"Take out the later route to {at}; the first one counts",
                    FixSafety.Unsafe,
                    edits.ToValueList(),
                    "Ask whoever wrote the later one which of the two is meant."
                ),
            ];
    }

    private static Fix Manual(Finding finding) =>
        Fix.Manual(
            $"Decide what {finding.IdOf("sink")} shall get",
            "Keep the first one and take the other out of the document and off the rig",
            "Keep the other one and take the first out"
        );
}
