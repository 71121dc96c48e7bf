using RoutingRules.Model;

namespace RoutingRules.Planning.Losses;

/// <summary>
/// What to pull, plug and load after a loss so that as much as can be sounds again; nothing that goes on is touched but what gives up its place, see
/// <see cref="Displaced"/>.
/// </summary>
/// <remarks>
/// The steps were carried out on a copy of the show and every demand said to be recovered was traced in it, with the failed thing failed; so was everything
/// that went on before. Carry them out muted, in the order given.
/// </remarks>
public sealed record FallbackPlan
{
    /// <summary>The steps, in order.</summary>
    public required ValueList<FallbackStep> Steps { get; init; }

    /// <summary>What sounds again, the most important first.</summary>
    public required ValueList<RecoveredDemand> Recovered { get; init; }

    /// <summary>What stays silent, the most important first.</summary>
    public required ValueList<UnrecoveredDemand> Unrecovered { get; init; }

    /// <summary>What went on and gives up its place for something of higher priority, in the order of the plan.</summary>
    public ValueList<DisplacedDemand> Displaced { get; init; }

    /// <summary>Errors that the rules find in the show after the steps and not before, apart from the loss itself.</summary>
    public ValueList<string> NewErrors { get; init; }

    /// <summary>How many demands are plugged elsewhere.</summary>
    public int Moves => Steps.Count(step => step.Kind == FallbackStepKind.Replug);

    /// <summary>
    /// The show after the steps: cables moved, streams and routes set, phantom and gain of an input taken along with its line. Feeds and lines stay as written.
    /// </summary>
    /// <param name="show">The show the plan was made for.</param>
    /// <exception cref="ArgumentNullException"><paramref name="show"/> is null.</exception>
    public Show Apply(Show show)
    {
        ArgumentNullException.ThrowIfNull(show);
        return FallbackSteps.Apply(show, Steps);
    }
}
