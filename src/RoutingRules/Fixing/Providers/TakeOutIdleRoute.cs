using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Takes a route out that a fixed sink does not heed.</summary>
internal sealed class TakeOutIdleRoute : FixProvider
{
    public override string RuleId => "RR2010";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var sinks = context.RunOf(finding, "to");
        var idle = context.Resolved.IdleRoutes.Select(entry => (entry.RouteIndex, entry.Sink)).ToHashSet();
        var isClearing = finding.IdOf("from") is null;
        var edits = RouteEdits.TakeOut(
            context,
            (route, position) => route.IsNull == isClearing && sinks.Has(route.To + position) && idle.Contains((route.Index, route.To + position))
        );
        return edits.Count == 0 ? [] : [Fix.Of($"Take out the route to {finding.IdOf("to")}, which has no effect", FixSafety.Safe, edits.ToValueList())];
    }
}
