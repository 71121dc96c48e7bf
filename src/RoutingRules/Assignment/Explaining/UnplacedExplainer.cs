using RoutingRules.Assignment.Problem;
using RoutingRules.Model;

namespace RoutingRules.Assignment.Explaining;

/// <summary>Adds to what found no place what stands against it and what would help.</summary>
internal static class UnplacedExplainer
{
    /// <summary>Entries that are explained at most; the rest keeps its reason alone.</summary>
    private const int MostEntries = 8;

    /// <summary>Assignments for all entries together, so that a large show is not explained for minutes.</summary>
    private const int MostRuns = 120;

    /// <summary>
    /// Demands beyond which a show whose links may fill up gets a share of the runs, each with a share of the work: all its demands hang together.
    /// </summary>
    private const int MostQuick = 40;

    private const int SlowShare = 6;

    private const int RunsPerConflict = 40;

    private const int RunsPerRelaxations = 20;

    /// <param name="assigner">Assigns.</param>
    /// <param name="show">The show that was assigned.</param>
    /// <param name="options">How it was assigned.</param>
    /// <param name="result">What that gave.</param>
    /// <param name="isAsked">Which demands are asked about.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static AssignmentResult Explain(
        ShowAssigner assigner,
        Show show,
        AssignmentOptions options,
        AssignmentResult result,
        Func<string, bool> isAsked,
        CancellationToken cancellation
    )
    {
        if (!result.Unplaced.Any(entry => isAsked(entry.Demand)))
        {
            return result;
        }

        var problem = ProblemBuilder.Build(assigner.Resolve(show), options, cancellation);
        var isSlow = problem.Links.Count > 0 && problem.Demands.Length > MostQuick;
        var again = new Reassigner(
            assigner,
            show,
            isSlow ? options with { Budget = options.Budget / SlowShare } : options,
            isSlow ? MostRuns / SlowShare : MostRuns,
            cancellation
        );
        var conflicts = new ConflictFinder(again, problem, result);
        var relaxations = new RelaxationFinder(again, problem, result);
        var left = MostEntries;
        var unplaced = new List<UnplacedDemand>();
        foreach (var entry in result.Unplaced)
        {
            if (cancellation.IsCancellationRequested || !isAsked(entry.Demand) || left-- <= 0)
            {
                unplaced.Add(entry);
                continue;
            }

            again.Allow(RunsPerConflict);
            var explained = conflicts.Explain(entry);
            again.Allow(RunsPerRelaxations);
            unplaced.Add(explained with { Relaxations = relaxations.Find(explained) });
        }

        return result with
        {
            Unplaced = unplaced.ToValueList(),
        };
    }
}
