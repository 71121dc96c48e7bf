using RoutingRules.Diagnosis.Candidates;
using RoutingRules.Fixing;
using RoutingRules.Rules;

namespace RoutingRules.Diagnosis;

/// <summary>Repairs of findings that are about something else than what arrives: the rig, settings, and what is there too much.</summary>
internal static class OtherRepairs
{
    /// <summary>Rules whose findings go away when what somebody waits for is taken out.</summary>
    private static readonly HashSet<string> Hides = ["RR2002", "RR4005"];

    /// <summary>The repairs of one finding, the likeliest first.</summary>
    public static List<OtherRepair> For(FixState state, IReadOnlyList<FixProvider> providers, Finding finding)
    {
        var found = RigRepairs.For(state.Show, finding);
        found.AddRange(SettingRepairs.For(state.Show, finding));
        found.AddRange(NameRepairs.For(state.Show, finding));
        found.AddRange(GridRepairs.For(state.Show, finding));
        found.AddRange(LabelSwaps.For(state.Show, finding));
        found.AddRange(CableSwaps.For(state.Show, finding));
        found.AddRange(PlugRepairs.For(state.Show, finding));
        found.AddRange(SetPlugRepairs.For(state.Show, finding));
        if (Hides.Contains(finding.Rule) && state.Show.Demands.Any(demand => demand.Existing.IsNone))
        {
            return found;
        }

        var context = new FixContext(state.Show);
        foreach (var provider in providers)
        {
            if (provider.RuleId == finding.Rule)
            {
                found.AddRange(Ask(provider, context, finding).Select(fix => new OtherRepair(finding.Message.TrimEnd('.'), fix)));
            }
        }

        found.AddRange(Removals.For(state.Show, finding));
        return found;
    }

    private static IEnumerable<Fix> Ask(FixProvider provider, FixContext context, Finding finding)
    {
        try
        {
            return provider.Propose(context, finding).Where(fix => fix.Safety != FixSafety.Manual).ToList();
        }
        catch (Exception fault) when (fault is not OperationCanceledException and not OutOfMemoryException)
        {
            return [];
        }
    }
}
