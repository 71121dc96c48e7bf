using RoutingRules.Assignment;
using RoutingRules.Assignment.Explaining;
using RoutingRules.Assignment.Result;
using RoutingRules.Checking;
using RoutingRules.Checking.Catalogue;
using RoutingRules.Configuration;
using RoutingRules.Diagnosis;
using RoutingRules.Documents;
using RoutingRules.Fixing;
using RoutingRules.Model;
using RoutingRules.Plugins;
using RoutingRules.Resolving;
using RoutingRules.Rules;
using RoutingRules.Signal.Profiles;
using RoutingRules.Tracing;

namespace RoutingRules;

/// <summary>The engine: checks shows, assigns them and resolves them for questions. Immutable and thread safe; make one and keep it.</summary>
public sealed class RoutingEngine
{
    internal RoutingEngine(
        Rule[] rules,
        ActiveRule[] active,
        ProfileLibrary profiles,
        FixProvider[] fixProviders,
        AssignmentStrategy[] strategies,
        PluginInfo[] plugins,
        EngineConfig config
    )
    {
        Rules = rules;
        Config = config;
        Catalogue = StandingRules.All.Concat(rules.Select(rule => rule.Descriptor)).OrderBy(rule => rule.Id, StringComparer.Ordinal).ToValueList();
        FixProviders = fixProviders;
        Plugins = plugins;
        Checker = new Checker(profiles, active);
        Assigner = new ShowAssigner(Checker, strategies);
    }

    /// <summary>The rules, by id, those that the configuration switches off included.</summary>
    public IReadOnlyList<Rule> Rules { get; }

    /// <summary>The configuration; the usual one when none was given.</summary>
    public EngineConfig Config { get; }

    /// <summary>
    /// Every rule that reports can name, by id: those of the readers, those about waivers, changes and running orders, and <see cref="Rules"/>.
    /// </summary>
    public ValueList<RuleDescriptor> Catalogue { get; }

    /// <summary>The profiles.</summary>
    public ProfileLibrary Profiles => Checker.Profiles;

    /// <summary>The providers of fixes: the built-in ones, then others in the order they were added.</summary>
    public IReadOnlyList<FixProvider> FixProviders { get; }

    /// <summary>The strategies of assignment: the default one, the other built-in ones, then others in the order they were added.</summary>
    public IReadOnlyList<AssignmentStrategy> Strategies => Assigner.Strategies;

    /// <summary>The plugins, in the order they were added.</summary>
    public IReadOnlyList<PluginInfo> Plugins { get; }

    /// <summary>What works inside: it takes the shows that answers make on their way without looking at them again.</summary>
    internal Checker Checker { get; }

    internal ShowAssigner Assigner { get; }

    /// <summary>Starts an engine with the built-in rules and no profiles.</summary>
    public static RoutingEngineBuilder CreateBuilder() => new();

    /// <summary>Resolves a show: devices, signal graph, demands.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">A member of the show holds what no document can say; the message gives its JSON Pointer. Every answer about a show
    /// refuses such ones.</exception>
    public ResolvedShow Resolve(Show show)
    {
        Writable.Demand(show, nameof(show));
        return Checker.Resolve(show);
    }

    /// <summary>Runs the rules on a show.</summary>
    /// <param name="show">The show.</param>
    /// <param name="cancellation">Stops between subjects.</param>
    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(Show show, CancellationToken cancellation = default) => Check(Resolve(show), cancellation);

    /// <summary>Runs the rules on a show under the eyes of an observer.</summary>
    /// <param name="show">The show.</param>
    /// <param name="observer">Told when each rule starts and ends.</param>
    /// <param name="cancellation">Stops between subjects.</param>
    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(Show show, RuleObserver observer, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(observer);
        return Checker.Check(Resolve(show), observer, cancellation);
    }

    /// <summary>Runs the rules on a resolved show.</summary>
    /// <param name="show">The show.</param>
    /// <param name="cancellation">Stops between subjects.</param>
    /// <exception cref="OperationCanceledException">The check was cancelled.</exception>
    public CheckResult Check(ResolvedShow show, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(show);
        return Checker.Check(show, cancellation);
    }

    /// <summary>Computes the patch of a show.</summary>
    /// <param name="show">The show.</param>
    /// <param name="options">What the assignment may and must do.</param>
    /// <param name="cancellation">Stops the search; the best result so far is returned.</param>
    /// <exception cref="ArgumentException">An option is out of range or names something that does not exist.</exception>
    /// <exception cref="UnsupportedAssignmentException">The strategy cannot take into account something that the show uses.</exception>
    /// <exception cref="InvalidProposalException">The strategy proposed something that breaks a rule.</exception>
    /// <exception cref="UnsoundResultException">What was computed breaks a rule, as <see cref="Verification.AssignmentVerifier"/> finds: a mistake of the
    /// engine.</exception>
    public AssignmentResult Assign(Show show, AssignmentOptions? options = null, CancellationToken cancellation = default)
    {
        Writable.Demand(show, nameof(show));
        options ??= new AssignmentOptions();
        var result = Assigner.Assign(show, options, cancellation);
        result = SecondLook.At(Assigner, show, options, result, cancellation);
        Verification.ResultGate.Pass(show, result, options, id => Profiles.Find(id)?.Value);
        result = options.ExplainUnplaced ? UnplacedExplainer.Explain(Assigner, show, options, result, static _ => true, cancellation) : result;
        if (!ResultDetails.AreWanted(options))
        {
            return result;
        }

        var detailed = ResultDetails.Write(Checker.Resolve(show), Checker.Resolve(result.Show), options);
        return result with { Show = detailed, Check = Checker.Check(detailed, cancellation) };
    }

    /// <summary>Answers why a feed or a line is where an assignment places it, and what if it were not.</summary>
    /// <param name="show">The show; its patch counts as what stands.</param>
    /// <param name="question">The question.</param>
    /// <param name="options">How the show is assigned; null for the usual way.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> or <paramref name="question"/> is null.</exception>
    /// <exception cref="ArgumentException">
    /// The show has no such feed or line, a point does not exist or cannot be meant, or an option is out of range; the message says what to ask instead.
    /// </exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public WhyAnswer Why(Show show, WhyQuestion question, AssignmentOptions? options = null, CancellationToken cancellation = default)
    {
        Writable.Demand(show, nameof(show));
        ArgumentNullException.ThrowIfNull(question);
        return WhyBuilder.Answer(Assigner, show, question, options ?? new AssignmentOptions(), cancellation);
    }

    /// <summary>
    /// Mends what the rules find, as far as there are fixes: each is tried on a copy and taken only when its finding is gone and nothing worse has come.
    /// </summary>
    /// <param name="show">The show; stays as it is.</param>
    /// <param name="options">Which fixes are wanted; null for the safe ones of all rules.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public FixResult Fix(Show show, FixOptions? options = null, CancellationToken cancellation = default)
    {
        Writable.Demand(show, nameof(show));
        return Fixer.Run(Checker, FixProviders, show, options ?? new FixOptions(), cancellation);
    }

    /// <summary>The fixes of a finding that hold: those with edits were each tried on a copy of the show; manual ones follow as they are.</summary>
    /// <param name="show">The show.</param>
    /// <param name="check">What the rules said about it.</param>
    /// <param name="finding">One of its findings.</param>
    /// <param name="cancellation">Stops the run.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public ValueList<Fix> OfferFixes(ResolvedShow show, CheckResult check, Finding finding, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(check);
        ArgumentNullException.ThrowIfNull(finding);
        return Fixer.Offer(Checker, FixProviders, show, check, finding, cancellation);
    }

    /// <summary>Finds what the findings of a show come from: each cause with a repair that was applied to a copy, traced and checked.</summary>
    /// <param name="show">The show.</param>
    /// <param name="check">What the rules said about it.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The causes, those that explain most first; none for a show in which nothing is graver than a note.</returns>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public ValueList<Cause> Diagnose(ResolvedShow show, CheckResult check, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(show);
        ArgumentNullException.ThrowIfNull(check);
        return Diagnostician.Run(Checker, FixProviders, show, check, cancellation).Causes;
    }

    /// <summary>Mends one cause: its repair is applied, and taken when the findings that it explains are gone and nothing graver has come.</summary>
    /// <param name="show">The show; stays as it is.</param>
    /// <param name="number">The number of the cause in what <see cref="Diagnose"/> gives, from 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">There is no such cause, or its repair is one for a person; the message says which.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public FixResult FixCause(Show show, int number, CancellationToken cancellation = default)
    {
        Writable.Demand(show, nameof(show));
        return CauseMender.Run(Checker, FixProviders, show, number, cancellation);
    }

    /// <summary>Writes what stands as points: every feed that may be anywhere in a zone or at a device, and every line, names the place it has now.</summary>
    /// <remarks>What a show names can be told when it slips; what it leaves open cannot as long as it still fits.</remarks>
    /// <param name="show">The show; stays as it is.</param>
    /// <param name="only">The ids of the feeds and lines to look at; null for all.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public PinResult Pin(Show show, IReadOnlyCollection<string>? only = null) => PinEdits.Of(Resolve(show), only);

    /// <summary>Takes points out of what a show asks for: a feed or a line that names a connector may stand at any of the same device afterwards.</summary>
    /// <remarks>Lines at several points, the legs of a split, keep them, and so does what only its name allows, such as a receive slot.</remarks>
    /// <param name="show">The show; stays as it is.</param>
    /// <param name="only">The ids of the feeds and lines to look at; null for all.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public UnpinResult Unpin(Show show, IReadOnlyCollection<string>? only = null) =>
        UnpinEdits.Of(Resolve(show), demand => only?.Contains(PinEdits.OwnerOf(demand)) != false, Checker.Resolve);

    /// <summary>Follows the signal at a point in both directions.</summary>
    /// <param name="show">The show.</param>
    /// <param name="at">A point of its graph, such as <see cref="SignalGraph.Find(Point)"/> gives.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="at"/> is no point of the graph.</exception>
    public static SignalTrace Trace(ResolvedShow show, PointIndex at)
    {
        ArgumentNullException.ThrowIfNull(show);
        ArgumentOutOfRangeException.ThrowIfNegative(at.Value, nameof(at));
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(at.Value, show.Graph.PointCount, nameof(at));
        return Tracer.Trace(show, at);
    }
}
