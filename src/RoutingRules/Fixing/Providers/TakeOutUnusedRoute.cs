using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Takes routes out that lead to slots nobody sends.</summary>
internal sealed class TakeOutUnusedRoute : FixProvider
{
    public override string RuleId => "RR2008";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var (first, width) = context.RunOf(finding, "slot");
        var edits = width == 0 ? [] : RouteEdits.TakeOut(context, first, width);
        return edits.Count == 0 ? [] : [Fix.Of($"Take out the route to {finding.IdOf("slot")}, which is not sent", FixSafety.Safe, edits.ToValueList())];
    }
}
