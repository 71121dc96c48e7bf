namespace RoutingRules.Rules;

/// <summary>How a rule ended on a document.</summary>
public enum RuleStatus
{
    /// <summary>There was nothing for it to look at.</summary>
    NotApplicable,

    /// <summary>It looked at something and found nothing.</summary>
    Passed,

    /// <summary>It reported at least one finding.</summary>
    Found,

    /// <summary>It reported nothing, but could not decide about at least one subject.</summary>
    Undecided,
}
