using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Result;
using RoutingRules.Assignment.Search;
using RoutingRules.Assignment.Strategies;
using RoutingRules.Model;

namespace RoutingRules.Assignment;

/// <summary>Computes the patch of a show: firm demands first, then each independent part greedily and, where small enough, exactly.</summary>
internal sealed class Assigner
{
    private const long FinalWiringBudget = 100_000;

    private readonly ShowAssigner assigner;
    private readonly AssignmentProblem problem;
    private readonly AssignmentStrategy strategy;
    private readonly Evaluator evaluator;
    private readonly CancellationToken cancellation;

    private Assigner(ShowAssigner assigner, AssignmentProblem problem, AssignmentStrategy strategy, CancellationToken cancellation)
    {
        this.assigner = assigner;
        this.problem = problem;
        this.strategy = strategy;
        this.cancellation = cancellation;
        evaluator = new Evaluator(problem);
    }

    /// <summary>Assigns a show.</summary>
    /// <exception cref="ArgumentException">An option is out of range or names something the rig does not have.</exception>
    public static AssignmentResult Assign(ShowAssigner assigner, Show show, AssignmentOptions options, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(show);
        ArgumentOutOfRangeException.ThrowIfNegative(options.Spares, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegative(options.Headroom, nameof(options));
        ArgumentOutOfRangeException.ThrowIfNegative(options.Budget, nameof(options));
        if (!(options.LinkPercent is >= 1 and <= 100))
        {
            throw new ArgumentOutOfRangeException(nameof(options), options.LinkPercent, "The share of a link must be from 1 to 100 percent.");
        }

        if (options.LatencyMilliseconds is { } late && !(late > 0) || options.InEarLatencyMilliseconds is { } lateInEar && !(lateInEar > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(options), "A latency must be above 0 milliseconds.");
        }

        var strategy =
            assigner.Strategies.FirstOrDefault(strategy => strategy.Name == (options.Strategy ?? PortfolioStrategy.Id))
            ?? throw new ArgumentException(
                $"There is no strategy '{options.Strategy}'; there are {string.Join(", ", assigner.Strategies.Select(strategy => strategy.Name))}.",
                nameof(options)
            );
        var problem = ProblemBuilder.Build(assigner.Resolve(show), options, cancellation);
        return new Assigner(assigner, problem, strategy, cancellation).Run();
    }

    private AssignmentResult Run()
    {
        var firm = new PinsAndHolds(problem, evaluator);
        firm.Settle();
        var sums = new int[ObjectiveVector.Length];
        var (choices, proven) = SearchParts(firm, sums);
        var active = Enumerable.Range(0, problem.Demands.Length).ToArray();
        var score = evaluator.Evaluate(active, choices, null, FinalWiringBudget, null, out var isBestWiring);
        var wiring = evaluator.Wire(active, choices, FinalWiringBudget);
        if (score is null || wiring is null)
        {
            throw new InvalidOperationException("The choices found cannot stand together.");
        }

        // Parts that took one receive block both may end dearer together than each by itself.
        isBestWiring &= !Evaluator.Settle(score, wiring.Cost);
        proven =
            problem.IsCut ? 0
            : isBestWiring ? proven
            : Joined(score, sums, proven);
        var writer = new PatchWriter(problem, choices, wiring);
        var result = writer.Write(assigner.Resolve);
        return new AssignmentReport(problem, evaluator, firm, choices, score, proven, cancellation.IsCancellationRequested).Build(
            result,
            assigner.Resolve(result),
            writer,
            assigner.Checker
        );
    }

    private (int[] Choices, int Proven) SearchParts(PinsAndHolds firm, int[] sums)
    {
        var choices = GreedySearch.NewChoices(problem);
        var proven = ObjectiveVector.Length;
        var parts = SubProblemFinder.Find(problem, firm.Choices);
        foreach (var active in parts)
        {
            var found = new SubProblemSolver(problem, evaluator, firm, active, new StrategySearch(problem, evaluator, strategy, cancellation)).Solve(
                problem.Options.Budget / parts.Count
            );
            proven = Math.Min(proven, found.ProvenNumbers);
            for (var i = 0; i < sums.Length; i++)
            {
                sums[i] += found.Score.Numbers[i];
            }

            foreach (var index in active)
            {
                choices[index] = found.Choices[index];
            }
        }

        return (choices, proven);
    }

    /// <summary>Numbers proven for the parts are proven for the whole as far as it is the sum of its parts: its wiring may be dearer.</summary>
    private int Joined(ChoiceScore score, int[] sums, int proven)
    {
        for (var i = 0; i < proven; i++)
        {
            var at = LevelOrder.At(evaluator.Order, i);
            if (score.Numbers[at] != sums[at])
            {
                return i;
            }
        }

        return proven;
    }
}
