using RoutingRules.Assignment;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Solves each part with a constraint solver, level by level, each level fixed before the next. Immutable and thread safe.</summary>
public sealed class CpSatStrategy : AssignmentStrategy
{
    private readonly double effort;
    private readonly double seconds;

    /// <summary>A strategy with the usual effort.</summary>
    public CpSatStrategy()
        : this(20) { }

    /// <summary>A strategy with a given effort.</summary>
    /// <param name="effort">Deterministic time of the solver for each part, in units of roughly a second, above 0.</param>
    /// <param name="seconds">Time by the clock for each part, above 0; infinite for answers that do not depend on the machine.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number is not above 0.</exception>
    public CpSatStrategy(double effort, double seconds = double.PositiveInfinity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(effort);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(seconds);
        this.effort = effort;
        this.seconds = seconds;
    }

    /// <inheritdoc/>
    public override string Name => "cp-sat";

    /// <inheritdoc/>
    public override string Title => "Constraint solver, level by level";

    /// <inheritdoc/>
    public override StrategyAnswer? Search(AssignmentPart part, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(part);
        if (part.Demands.Any(demand => demand.IsFirm && demand.Candidates.Count == 0))
        {
            return null;
        }

        var placements = new PlacementModel(part);
        var wiring = new WiringModel(part, placements);
        var solved = new LevelSolver(part, placements, wiring, effort, seconds, cancellation).Run();
        return solved is { } found ? Answer(part, found.Choices, found.Values) : null;
    }

    /// <summary>Levels count as proven only up to the first one on which the engine's own count differs from the model's.</summary>
    private static StrategyAnswer Answer(AssignmentPart part, int[] choices, List<long> proven)
    {
        var numbers = 0;
        if (part.Score(choices) is { } vector)
        {
            while (numbers < proven.Count && vector.Values[numbers < 6 ? numbers : 6 + (int)part.Order[numbers - 6]] == proven[numbers])
            {
                numbers++;
            }
        }

        return new StrategyAnswer { Choices = [.. choices], ProvenNumbers = numbers };
    }
}
