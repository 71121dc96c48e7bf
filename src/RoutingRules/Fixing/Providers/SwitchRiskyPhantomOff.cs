using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>
/// Switches phantom power off where it stands against an output or a line at line level, unless that is said to need it. Unsafe: an isolating transformer may
/// be what is meant.
/// </summary>
internal sealed class SwitchRiskyPhantomOff : FixProvider
{
    public override string RuleId => "RR6013";

    public override ValueList<Fix> Propose(FixContext context, Finding finding) =>
        context.Show.Lines.Any(line => line.Phantom == PhantomNeed.Required && line.Id.Value == finding.IdOf("line"))
            ? []
            : SwitchPhantomOff.Propose(context, finding, FixSafety.Unsafe);
}
