namespace RoutingRules.Rules;

/// <summary>Thrown through a rule that used up its work units for one subject; the engine turns it into "could not decide".</summary>
internal sealed class WorkBudgetException : Exception
{
    public WorkBudgetException()
        : base("The rule used up its work units for one subject.") { }
}
