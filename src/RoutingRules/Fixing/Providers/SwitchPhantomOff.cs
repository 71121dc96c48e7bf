using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Switches phantom power off where a line must not get it.</summary>
internal sealed class SwitchPhantomOff : FixProvider
{
    public const string Caution = "Mute the channels, switch it off, and wait until it has drained before anything is plugged.";

    public override string RuleId => "RR6004";

    public override ValueList<Fix> Propose(FixContext context, Finding finding) => Propose(context, finding, FixSafety.Safe);

    public static ValueList<Fix> Propose(FixContext context, Finding finding, FixSafety safety)
    {
        var (first, width) = context.RunOf(finding, "input");
        var inputs = Enumerable.Range(0, width).Select(position => first + position).ToList();
        return width == 0
            ? []
            : [Fix.Of($"Switch phantom power off at {finding.IdOf("input")}", safety, InputEdits.SetPhantom(context, inputs, false), Caution)];
    }
}
