using RoutingRules.Checking.Catalogue;
using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Planning.RunningOrders;

/// <summary>Everything a running order comes to.</summary>
public sealed record RunningOrderPlan
{
    /// <summary>The running order.</summary>
    public required RunningOrder Run { get; init; }

    /// <summary>The acts, in the order in which they play.</summary>
    public required ValueList<ActPlan> Acts { get; init; }

    /// <summary>The changeovers: one less than acts.</summary>
    public required ValueList<RunningOrderChangeover> Changeovers { get; init; }

    /// <summary>Findings that every act has, as the first act gives them: the rig is to blame, and mending it once is enough.</summary>
    public required ValueList<Finding> CommonFindings { get; init; }

    /// <summary>Findings about the running order itself; see <see cref="RunningOrderRules"/>.</summary>
    public required ValueList<Finding> RunFindings { get; init; }

    /// <summary>How many of each thing are needed at once, by kind, then name.</summary>
    public required ValueList<KitTotal> Kit { get; init; }

    /// <summary>What is plugged into each input, act by act.</summary>
    internal ValueList<GridRow> Grid { get; init; }

    /// <summary>Findings of an act that not every act has.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="act"/> is null.</exception>
    public ValueList<Finding> OwnFindings(ActPlan act)
    {
        ArgumentNullException.ThrowIfNull(act);
        var common = CommonFindings.Select(finding => finding.Fingerprint()).ToHashSet(StringComparer.Ordinal);
        return act.Check.Findings.Where(finding => !common.Contains(finding.Fingerprint())).ToValueList();
    }
}
