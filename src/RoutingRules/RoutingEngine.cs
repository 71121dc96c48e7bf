using RoutingRules.Assignment;
using RoutingRules.Model;
using RoutingRules.Plugins;
using RoutingRules.Resolving;
using RoutingRules.Rules;

namespace RoutingRules;

/// <summary>The engine: checks shows, assigns them and resolves them for questions. Immutable and thread safe; make one and keep it.</summary>
public sealed class RoutingEngine
{
    private readonly Rule[] rules;
    private readonly (Rule Rule, Severity Severity)[] active;

    internal RoutingEngine(Rule[] rules, ProfileLibrary profiles, PluginInfo[] plugins)
    {
        this.rules = rules;
        active = Array.ConvertAll(rules, rule => (rule, rule.Descriptor.Severity));
        Profiles = profiles;
        Plugins = plugins;
    }

    /// <summary>The rules, by id.</summary>
    public IReadOnlyList<Rule> Rules => rules;

    /// <summary>The profiles.</summary>
    public ProfileLibrary Profiles { get; }

    /// <summary>The plugins, in the order they were added.</summary>
    public IReadOnlyList<PluginInfo> Plugins { get; }

    /// <summary>Starts an engine with the built-in rules and no profiles.</summary>
    public static RoutingEngineBuilder CreateBuilder() => new();

    /// <summary>Resolves a show: devices, signal graph, demands.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public ResolvedShow Resolve(Show show) => ShowResolver.Resolve(show, Profiles);

    /// <summary>Runs the rules on a show.</summary>
    /// <param name="show">The show.</param>
    /// <param name="cancellation">Stops between subjects.</param>
    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(Show show, CancellationToken cancellation = default) => Check(Resolve(show), cancellation);

    /// <summary>Runs the rules on a resolved show.</summary>
    /// <param name="show">The show.</param>
    /// <param name="cancellation">Stops between subjects.</param>
    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(ResolvedShow show, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(show);
        return RuleRunner.Run(show, active, RuleRunner.DefaultBudget, cancellation);
    }

    /// <summary>Computes the patch of a show.</summary>
    /// <param name="show">The show.</param>
    /// <param name="options">What the assignment may and must do.</param>
    /// <param name="cancellation">Stops the search; the best result so far is returned.</param>
    public AssignmentResult Assign(Show show, AssignmentOptions? options = null, CancellationToken cancellation = default) =>
        Assigner.Assign(this, show, options ?? new AssignmentOptions(), cancellation);
}
