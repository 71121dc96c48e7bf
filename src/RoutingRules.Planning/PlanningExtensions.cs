using RoutingRules.Assignment;
using RoutingRules.Documents;
using RoutingRules.Documents.Formats;
using RoutingRules.Model;
using RoutingRules.Planning.Changeovers;
using RoutingRules.Planning.Comparing;
using RoutingRules.Planning.LineChecks;
using RoutingRules.Planning.Losses;
using RoutingRules.Planning.RunningOrders;

namespace RoutingRules.Planning;

/// <summary>What an engine answers about more than one state of a show.</summary>
public static class PlanningExtensions
{
    /// <summary>Says what differs between two shows.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="before">The show to start from.</param>
    /// <param name="after">The show to arrive at.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">The engine or a show is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ShowComparison Compare(this RoutingEngine engine, Show before, Show after, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        Writable.Demand(before, nameof(before));
        Writable.Demand(after, nameof(after));
        return ShowComparer.Of(engine.Checker, before, after).Compare(engine.Checker, cancellation);
    }

    /// <summary>Plans the way from one show to the next: steps in a safe order, and a card for each place.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="before">The show that is played.</param>
    /// <param name="after">The show that comes.</param>
    /// <param name="pace">How long things take; null for the usual times.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">The engine or a show is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ChangeoverPlan PlanChangeover(this RoutingEngine engine, Show before, Show after, Pace? pace = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        Writable.Demand(before, nameof(before));
        Writable.Demand(after, nameof(after));
        return ChangeoverPlanner.Plan(
            engine.Checker,
            ShowComparer.Of(engine.Checker, before, after),
            pace ?? new Pace(),
            new Dictionary<string, string>(),
            cancellation
        );
    }

    /// <summary>Writes into a show what a line check found: what does not work, what is kept for somebody else, and where plugs are.</summary>
    /// <remarks>
    /// Where plugs are elsewhere, the show says so afterwards: cables, and the places of feeds and lines, go with them, and so do settings and labels of
    /// inputs. Its routes stay; assigning it again lets them follow.
    /// </remarks>
    /// <param name="engine">The engine.</param>
    /// <param name="show">The show; stays as it is.</param>
    /// <param name="results">What was found; what is said of plugs holds all at once, whatever the order.</param>
    /// <param name="freesDead">True when feeds and lines that name a connector which does not work may stand elsewhere on its device.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static LineCheckRecord RecordLineCheck(this RoutingEngine engine, Show show, IReadOnlyList<LineCheckResult> results, bool freesDead = false)
    {
        ArgumentNullException.ThrowIfNull(engine);
        ArgumentNullException.ThrowIfNull(results);
        Writable.Demand(show, nameof(show));
        return LineCheckRecorder.Record(engine.Checker, show, results, freesDead);
    }

    /// <summary>Plans a running order: a show for each act, the changeovers between them, and what all acts share.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="order">The running order.</param>
    /// <param name="options">How acts without a patch of their own are assigned; null for the usual way.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException"><paramref name="engine"/> or <paramref name="order"/> is null.</exception>
    /// <exception cref="ArgumentException">An option is out of range or names something that does not exist.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static RunningOrderPlan PlanRun(
        this RoutingEngine engine,
        RunningOrder order,
        AssignmentOptions? options = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(engine);
        Writable.Demand(order, RunningOrderTable.Run, nameof(order));
        return RunningOrderPlanner.Plan(engine.Assigner, order, options ?? new AssignmentOptions(), cancellation);
    }

    /// <summary>Answers what each loss does to a show as it stands, and what can be done about it.</summary>
    /// <param name="engine">The engine.</param>
    /// <param name="show">The show; its patch counts as what stands.</param>
    /// <param name="options">Which losses; null for all devices, links, cables, looms and supplies, each alone, with plans.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException"><paramref name="engine"/> or <paramref name="show"/> is null.</exception>
    /// <exception cref="ArgumentException">An option is out of range or names something that does not exist.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ImpactAnswer Impact(this RoutingEngine engine, Show show, ImpactOptions? options = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(engine);
        Writable.Demand(show, nameof(show));
        return ImpactBuilder.Answer(engine.Assigner, show, options ?? new ImpactOptions(), cancellation);
    }
}
