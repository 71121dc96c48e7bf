using RoutingRules.Model;

namespace RoutingRules.Rules;

/// <summary>What checking a document gave: findings, and for each rule how it ended.</summary>
public sealed record CheckResult
{
    /// <summary>The findings, in <see cref="FindingOrder"/>.</summary>
    public required ValueList<Finding> Findings { get; init; }

    /// <summary>How each rule that was switched on ended, by rule id.</summary>
    public required ValueList<RuleOutcome> Rules { get; init; }

    /// <summary>What could not be decided and why, by rule id and subject order.</summary>
    public required ValueList<UndecidedSubject> Undecided { get; init; }

    /// <summary>False when the document could not be read in full, so that no rule was run on it.</summary>
    public required bool WasRead { get; init; }

    /// <summary>The worst severity found, or null when nothing was found.</summary>
    public Severity? Worst
    {
        get
        {
            Severity? worst = null;
            foreach (var finding in Findings)
            {
                worst = worst is null || finding.Severity > worst ? finding.Severity : worst;
            }

            return worst;
        }
    }

    /// <summary>True when there is no finding and nothing is undecided.</summary>
    public bool IsClean => WasRead && Findings.IsEmpty && Undecided.IsEmpty;
}
