using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal;
using RoutingRules.Signal.Profiles;

namespace RoutingRules.Checking;

/// <summary>Resolves shows and runs the rules on them. Takes shows as they are: whoever lets them in from outside has looked at them.</summary>
internal sealed class Checker(ProfileLibrary profiles, IReadOnlyList<ActiveRule> rules)
{
    public ProfileLibrary Profiles { get; } = profiles;

    public IReadOnlyList<ActiveRule> Rules { get; } = rules;

    public ResolvedShow Resolve(Show show) => ShowResolver.Resolve(show, Profiles);

    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(Show show, CancellationToken cancellation = default) => Check(Resolve(show), cancellation);

    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(ResolvedShow show, CancellationToken cancellation = default) => Check(show, null, cancellation);

    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(ResolvedShow show, RuleObserver? observer, CancellationToken cancellation = default) =>
        TwoReadings.Run(show, Profiles, Rules, RuleRunner.DefaultBudget, cancellation, observer);

    /// <summary>The same without rules, for shows that nobody gets to see.</summary>
    public Checker WithoutRules() => new(Profiles, []);
}
