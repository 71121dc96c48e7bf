namespace RoutingRules.Rules;

/// <summary>Told when each rule starts and ends on a document, for hosts that measure time; the engine itself has no clock.</summary>
/// <remarks>Called on the thread of the check. What it throws ends the check.</remarks>
public abstract class RuleObserver
{
    /// <summary>A rule starts.</summary>
    public abstract void Started(RuleDescriptor rule);

    /// <summary>The rule that started last has ended.</summary>
    public abstract void Ended(RuleOutcome outcome);
}
