using RoutingRules.Checking.Facts;
using RoutingRules.Checking.Facts.Lines;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Switches phantom power on for lines that need it. Unsafe: it puts a voltage on whatever is plugged there.</summary>
internal sealed class SwitchPhantomOn : FixProvider
{
    private const string Caution =
        "This puts 48 volts on the connector: see that nothing else is plugged there, above all no ribbon microphone and no output of a player, "
        + "and mute the channels first.";

    public override string RuleId => "RR6003";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var (first, width) = context.RunOf(finding, "input");
        var inputs =
            finding.IdOf("device") is { } device ? Unsaid(context, device)
            : finding.Pointer.StartsWith("/patch/inputs/", StringComparison.Ordinal) ? Enumerable.Range(0, width).Select(position => first + position).ToList()
            : [];
        if (inputs.Count == 0)
        {
            return [];
        }

        var names = inputs.ConvertAll(input => context.Resolved.Graph.Address(input).ToString());
        return [Fix.Of($"Switch phantom power on at {Wording.Names(names, false)}", FixSafety.Unsafe, InputEdits.SetPhantom(context, inputs, true), Caution)];
    }

    private static List<PointIndex> Unsaid(FixContext context, string device)
    {
        var table = InputTable.Of(context.Facts);
        var inputs = new SortedSet<PointIndex>();
        foreach (var (_, _, supplies) in LineInputs.Of(context.Facts, PhantomNeed.Required))
        {
            if (
                supplies.Count > 0
                && !supplies.Exists(input => table.Phantom(input) == true)
                && supplies.Exists(input => table.Phantom(input) is null)
                && context.Resolved.Graph.DeviceOf(supplies[0]).Id.Value == device
            )
            {
                inputs.Add(supplies[0]);
            }
        }

        return [.. inputs];
    }
}
