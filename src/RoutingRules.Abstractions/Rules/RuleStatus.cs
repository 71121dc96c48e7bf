namespace RoutingRules.Rules;

/// <summary>How a rule ended on a document.</summary>
public enum RuleStatus
{
    /// <summary>There was no subject for it.</summary>
    NotApplicable,

    /// <summary>It looked at every subject and found nothing.</summary>
    Passed,

    /// <summary>It reported at least one finding.</summary>
    Found,

    /// <summary>It reported nothing, but could not decide about at least one subject.</summary>
    Undecided,
}
