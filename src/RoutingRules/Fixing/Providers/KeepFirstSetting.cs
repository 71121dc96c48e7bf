using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Fixing.Providers;

/// <summary>Of two settings of an input that disagree, keeps the first, which is the one that counts. Unsafe: the later one may be what was meant.</summary>
internal sealed class KeepFirstSetting : FixProvider
{
    public override string RuleId => "RR6007";

    public override ValueList<Fix> Propose(FixContext context, Finding finding)
    {
        var index = finding.Number(2);
        var isPhantom = finding.IdOf("phantom") is not null;
        var points = context.RunOf(finding, isPhantom ? "phantom" : "gain");
        var settings = context.Show.Patch.Inputs;
        if (index < 0 || index >= settings.Count || context.Resolved.Graph.Find(settings[index].At, out var first) != ConnectionState.Connected)
        {
            return [];
        }

        var parts = InputEdits.Cut(
            settings[index],
            position => points.Has(first + position),
            part => isPhantom ? part with { Phantom = null } : part with { GainOwner = null }
        );
        if (parts is null)
        {
            return [];
        }

        parts.RemoveAll(static part => part.Phantom is null && part.GainOwner is null && part.GainFollowers.IsEmpty && part.Extensions is null);
        var edits = new List<ShowEdit>();
        ListEdits.Exchange(edits, ShowLists.Inputs, index, settings[index], parts);
        var what = isPhantom ? "phantom power" : "the gain";
        return
        [
            Fix.Of(
                $"Keep the first setting of {what} at {finding.IdOf(isPhantom ? "phantom" : "gain")} and take the later one out",
                FixSafety.Unsafe,
                edits.ToValueList(),
                "Ask both crews which of the two is meant."
            ),
        ];
    }
}
