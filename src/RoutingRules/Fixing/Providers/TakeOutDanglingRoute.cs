using RoutingRules.Checking.Facts.Points;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Takes routes out that start at something silent. Unsafe: the signal may be what is missing, not the route that is too much.</summary>
internal sealed class TakeOutDanglingRoute : FixProvider
{
    public override string RuleId => "RR2002";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var ends = context.RunOf(finding, "end");
        var silence = Silence.Of(context.Facts);
        var edits = RouteEdits.TakeOut(
            context,
            (route, position) =>
                !route.From.IsNone
                && context.Resolved.Graph.Upstream(route.To + position) == route.From + position
                && silence.IsSilent(route.From + position)
                && ends.Has(silence.End(route.From + position))
        );
        return edits.Count == 0
            ? []
            : [Fix.Of($"Take out what is routed from {finding.IdOf("end")}, where nothing arrives", FixSafety.Unsafe, edits.ToValueList())];
    }
}
