using RoutingRules.Checking;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules.Assignment;

/// <summary>Assigns shows with the strategies there are, and checks what comes out. Takes shows as they are and does not look at results once more.</summary>
internal sealed class ShowAssigner(Checker checker, IReadOnlyList<AssignmentStrategy> strategies)
{
    public Checker Checker { get; } = checker;

    public IReadOnlyList<AssignmentStrategy> Strategies { get; } = strategies;

    public ResolvedShow Resolve(Show show) => Checker.Resolve(show);

    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(Show show, CancellationToken cancellation = default) => Checker.Check(show, cancellation);

    /// <summary>Computes the patch of a show.</summary>
    /// <exception cref="ArgumentException">An option is out of range or names something that does not exist.</exception>
    public AssignmentResult Assign(Show show, AssignmentOptions options, CancellationToken cancellation) => Assigner.Assign(this, show, options, cancellation);

    /// <summary>The same without rules, for assignments that nobody gets to see.</summary>
    public ShowAssigner WithoutRules() => new(Checker.WithoutRules(), Strategies);
}
