using RoutingRules.Model;
using RoutingRules.Rules;

namespace RoutingRules.Fixing;

/// <summary>Offers fixes for what one rule finds. Asked only when somebody wants fixes, so that checking stays fast.</summary>
/// <remarks>A provider holds no state between calls, does no I/O and asks no clock. One instance serves many threads.</remarks>
public abstract class FixProvider
{
    /// <summary>The id of the rule, such as <c>RR2010</c>.</summary>
    public abstract string RuleId { get; }

    /// <summary>The ways to mend a finding, the best first; empty when there is none.</summary>
    /// <remarks>
    /// They are proposals: the engine applies one to a copy of the show, runs all rules again, and takes it only when the finding is gone and nothing
    /// worse has come.
    /// </remarks>
    /// <param name="context">The show in which the finding was made.</param>
    /// <param name="finding">A finding of the rule.</param>
    public abstract ValueList<Fix> Propose(FixContext context, Finding finding);
}
