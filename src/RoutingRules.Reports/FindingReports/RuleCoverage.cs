using RoutingRules.Rules;

namespace RoutingRules.Reports.FindingReports;

/// <summary>How one rule ended over the documents of a run: how many documents each way.</summary>
internal sealed class RuleCoverage(RuleDescriptor rule)
{
    public RuleDescriptor Rule { get; } = rule;

    public int Found { get; set; }

    public int Passed { get; set; }

    public int NotApplicable { get; set; }

    /// <summary>Documents on which it could not decide about something, whatever it found there.</summary>
    public int Undecided { get; set; }

    /// <summary>Those among the undecided that could not be read in full, so that it did not run on them.</summary>
    public int NotRun { get; set; }
}
