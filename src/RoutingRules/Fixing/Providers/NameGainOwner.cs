using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Lists the consoles that could own the gain of shared inputs; which one does is for the crews to agree.</summary>
internal sealed class NameGainOwner : FixProvider
{
    public override string RuleId => "RR6006";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var table = InputTable.Of(context.Facts);
        var consoles = new SortedSet<string>(StringComparer.Ordinal);
        var use = GainUse.Of(context.Facts);
        foreach (var input in use.Shared())
        {
            if (table.Owner(input) is null && context.Resolved.Graph.DeviceOf(input).Id.Value == finding.IdOf("device"))
            {
                consoles.UnionWith(use.Consoles(input).Select(console => console.Id.Value));
            }
        }

        return consoles.Count == 0
            ? []
            :
            [
                Fix.Manual(
                    "Agree which console owns the gain",
                    consoles.Select(console => $"Let {console} own it; the others follow with digital trim").ToValueList()
                ),
            ];
    }
}
