using System.Diagnostics;
using System.Globalization;
using Google.OrTools.Sat;
using RoutingRules.Assignment;

namespace RoutingRules.Strategies.CpSat;

/// <summary>Solves the numbers of the objective one after the other, each fixed before the next.</summary>
internal sealed class LevelSolver(
    AssignmentPart part,
    PlacementModel placements,
    WiringModel wiring,
    double effort,
    double seconds,
    CancellationToken cancellation
)
{
    /// <summary>The share of what is left that one level may use, so that later levels are still improved when it cannot be proven.</summary>
    private const double Share = 0.5;

    private const double LeastEffort = 0.01;

    private readonly CpModel model = placements.Model;
    private readonly ObjectiveModel objective = new(part, placements, wiring);
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly List<long> proven = [];
    private double left = effort;
    private bool isProving = true;
    private int[]? choices;
    private long value;
    private long[] solution = [];

    /// <summary>Solves.</summary>
    /// <returns>The best choices with the values of the numbers proven in order; null when no choices stand or none were found.</returns>
    public (int[] Choices, List<long> Values)? Run()
    {
        var start = part.Construct(cancellation);
        if (start is not null)
        {
            Hint(start);
        }

        for (var number = 0; number < ObjectiveVector.Length; number++)
        {
            if (number == 6 && !SettleFailed())
            {
                break;
            }

            if (objective.Number(number) is not { } total || !Minimise(total))
            {
                break;
            }

            if (isProving)
            {
                proven.Add(value);
            }
        }

        choices ??= start?.ToArray();
        return choices is null ? null : (choices, proven);
    }

    /// <summary>Of demands that cannot all be served, the first in list order is served where that is possible, then the next.</summary>
    private bool SettleFailed()
    {
        for (var demand = 0; demand < part.Demands.Count; demand++)
        {
            var failed = objective.Failed(demand);
            if (choices![demand] >= 0 && part.Demands[demand].Candidates[choices[demand]].Failed == 0)
            {
                failed.AtMost(model, 0);
            }
            else if (!Minimise(failed))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Finds the least value of a sum, and holds the sum at it from now on.</summary>
    /// <returns>False when time is up; the choices then stay as they were.</returns>
    private bool Minimise(Total total)
    {
        if (cancellation.IsCancellationRequested || left < LeastEffort || clock.Elapsed.TotalSeconds >= seconds)
        {
            return false;
        }

        model.Minimize(total.ToExpression());
        if (solution.Length < model.Model.Variables.Count)
        {
            // New variables follow from what is chosen already; with values for them the solver starts where it stopped.
            Solve(",fix_variables_to_their_hinted_value:true");
        }

        var isKnown = solution.Length == model.Model.Variables.Count;
        if (!isKnown || total.ValueIn(solution) > 0)
        {
            var status = Solve("");
            isKnown |= status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
            isProving &= status == CpSolverStatus.Optimal;
        }

        if (!isKnown)
        {
            return false;
        }

        value = total.ValueIn(solution);
        total.AtMost(model, value);
        return true;
    }

    private CpSolverStatus Solve(string parameters)
    {
        var solver = new CpSolver { StringParameters = Parameters() + parameters };
        using var registration = cancellation.Register(solver.StopSearch);
        var status = solver.Solve(model);
        left -= Math.Max(solver.Response!.DeterministicTime, LeastEffort / 10);
        if (status is CpSolverStatus.Optimal or CpSolverStatus.Feasible)
        {
            solution = [.. solver.Response.Solution];
            choices = Array.ConvertAll(placements.Chosen, candidates => Array.FindIndex(candidates, solver.BooleanValue));
            HintSolution();
        }

        return status;
    }

    private string Parameters()
    {
        var limit = Math.Max(left * Share, LeastEffort);
        var text = string.Create(CultureInfo.InvariantCulture, $"num_workers:1,random_seed:1,max_deterministic_time:{limit}");
        return double.IsInfinity(seconds)
            ? text
            : text
                + string.Create(CultureInfo.InvariantCulture, $",max_time_in_seconds:{Math.Max((seconds - clock.Elapsed.TotalSeconds) * Share, LeastEffort)}");
    }

    private void Hint(IReadOnlyList<int> start)
    {
        for (var demand = 0; demand < start.Count; demand++)
        {
            for (var candidate = 0; candidate < placements.Chosen[demand].Length; candidate++)
            {
                model.AddHint(placements.Chosen[demand][candidate], start[demand] == candidate ? 1 : 0);
            }
        }
    }

    private void HintSolution()
    {
        var hint = new PartialVariableAssignment();
        hint.Vars.AddRange(Enumerable.Range(0, solution.Length));
        hint.Values.AddRange(solution);
        model.Model.SolutionHint = hint;
    }
}
