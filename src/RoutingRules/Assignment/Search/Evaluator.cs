using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Model;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Assignment.Search;

/// <summary>Scores choices for a part of the demands and says whether they can stand together. Not thread safe.</summary>
/// <remarks>A choice is a candidate's position, <see cref="Unplaced"/> or <see cref="Undecided"/>.</remarks>
internal sealed class Evaluator
{
    public const int Unplaced = -1;
    public const int Undecided = -2;

    private readonly AssignmentProblem problem;
    private readonly int[] claimedBy;
    private readonly List<int> claimed = [];
    private readonly WiringSolver wiringSolver;
    private readonly List<WiringDemand> wiringDemands = [];
    private readonly int[] newInGroup;
    private readonly int[] usedInGroup;
    private readonly bool hasLinkSeparations;
    private readonly PlacementScorer placements;

    public Evaluator(AssignmentProblem problem)
    {
        this.problem = problem;
        wiringSolver = new WiringSolver(problem);
        claimedBy = new int[problem.Show.Graph.PointCount];
        Array.Fill(claimedBy, -1);
        newInGroup = new int[problem.UsableOutputs.Length];
        usedInGroup = new int[problem.UsableOutputs.Length];
        hasLinkSeparations = problem.Demands.Any(demand => demand.Separations.Any(separate => separate.By == SeparationBy.Link));
        Order = LevelOrder.Of(problem.Options);
        placements = new PlacementScorer(problem);
    }

    /// <summary>The order of the levels.</summary>
    public ObjectiveLevel[] Order { get; }

    /// <summary>Units of work used: wiring options tried and choices scored.</summary>
    public long Work => wiringSolver.Work + scored;

    private long scored;

    /// <summary>Counts work that a search did without asking for a score.</summary>
    public void Spend(long units) => scored += units;

    /// <summary>Scores choices, or returns null when they cannot stand together.</summary>
    /// <param name="active">Positions of the demands that count, ascending.</param>
    /// <param name="choices">A choice for every demand of the show.</param>
    /// <param name="mayFill">Outputs that need not be silent yet; null for none.</param>
    /// <param name="wiringBudget">Wiring options to try; 0 for the first wiring.</param>
    /// <param name="bound">A score to beat on what placements alone decide; null to score always.</param>
    /// <param name="isBestWiring">True when no cheaper wiring of the choices exists.</param>
    public ChoiceScore? Evaluate(int[] active, int[] choices, bool[]? mayFill, long wiringBudget, ChoiceScore? bound, out bool isBestWiring)
    {
        scored++;
        isBestWiring = true;
        if (!Claim(active, choices) || !KeepsSpares(active, choices) || !KeepsApart(active, choices))
        {
            return null;
        }

        var score = placements.Score(active, choices);
        if (bound is not null && score.CompareTo(bound, Order) >= 0)
        {
            return null;
        }

        Gather(active, choices);
        if (hasLinkSeparations)
        {
            var wiring = wiringSolver.Solve(wiringDemands, mayFill, wiringBudget, wiring => KeepsLinksApart(active, choices, wiring));
            isBestWiring = wiring?.IsBest ?? !wiringSolver.RanOut;
            return wiring is not null ? Complete(score, wiring.Cost) : null;
        }

        return wiringSolver.Price(wiringDemands, mayFill, wiringBudget, out isBestWiring) is { } cost ? Complete(score, cost) : null;
    }

    /// <summary>The cheapest wiring of choices; null when they cannot stand together.</summary>
    public WiringPlan? Wire(int[] active, int[] choices, long wiringBudget)
    {
        Gather(active, choices);
        return wiringSolver.Solve(wiringDemands, null, wiringBudget, hasLinkSeparations ? wiring => KeepsLinksApart(active, choices, wiring) : null);
    }

    private void Gather(int[] active, int[] choices)
    {
        wiringDemands.Clear();
        foreach (var index in active)
        {
            if (choices[index] >= 0)
            {
                var candidate = problem.Demands[index].Candidates[choices[index]];
                foreach (var delivery in candidate.Deliveries)
                {
                    wiringDemands.Add(new WiringDemand(delivery, candidate.IsExisting));
                }
            }
        }
    }

    /// <summary>Writes what a wiring costs into a score; false when that is what it says already.</summary>
    public static bool Settle(ChoiceScore score, WiringCost cost)
    {
        var before = (int[])score.Numbers.Clone();
        return !Complete(score, cost).Numbers.AsSpan().SequenceEqual(before);
    }

    private static ChoiceScore Complete(ChoiceScore score, WiringCost cost)
    {
        score.Numbers[ObjectiveNumbers.Rewritten] = cost.Rewritten;
        score.Numbers[ObjectiveNumbers.TransmitBlocks] = cost.Transmit;
        score.Numbers[ObjectiveNumbers.ReceiveBlocks] = cost.Receive;
        return score;
    }

    /// <summary>The demand that claims a point two choices want, when placing one more fails for that; -1 otherwise.</summary>
    public int ClaimantOf(int[] active, int[] choices, Candidate wanted, int except)
    {
        foreach (var index in active)
        {
            if (index != except && choices[index] >= 0 && problem.Demands[index].Candidates[choices[index]].Claims.AsSpan().IndexOfAny(wanted.Claims) >= 0)
            {
                return index;
            }
        }

        return -1;
    }

    private bool Claim(int[] active, int[] choices)
    {
        foreach (var point in claimed)
        {
            claimedBy[point] = -1;
        }

        claimed.Clear();
        foreach (var index in active)
        {
            if (choices[index] < 0)
            {
                continue;
            }

            foreach (var point in problem.Demands[index].Candidates[choices[index]].Claims)
            {
                if (claimedBy[point] >= 0)
                {
                    return false;
                }

                claimedBy[point] = index;
                claimed.Add(point);
            }
        }

        return true;
    }

    private bool KeepsSpares(int[] active, int[] choices)
    {
        if (problem.Options.Spares == 0)
        {
            return true;
        }

        Array.Clear(newInGroup);
        Array.Clear(usedInGroup);
        foreach (var index in active)
        {
            if (choices[index] < 0 || problem.Demands[index].Node.Line is not null)
            {
                continue;
            }

            var candidate = problem.Demands[index].Candidates[choices[index]];
            newInGroup[candidate.PortGroup] += candidate.AsksForSpares ? 1 : 0;
            foreach (var point in candidate.Claims)
            {
                usedInGroup[candidate.PortGroup] += problem.IsSpare[point] ? 1 : 0;
            }
        }

        for (var group = 0; group < newInGroup.Length; group++)
        {
            if (newInGroup[group] > 0 && problem.UsableOutputs[group] - usedInGroup[group] < problem.Options.Spares)
            {
                return false;
            }
        }

        return true;
    }

    private bool KeepsApart(int[] active, int[] choices)
    {
        foreach (var index in active)
        {
            var demand = problem.Demands[index];
            if (demand.Separations.Count == 0 || choices[index] < 0)
            {
                continue;
            }

            var mine = demand.Candidates[choices[index]].Device;
            foreach (var separate in demand.Separations)
            {
                if (choices[separate.Other] < 0)
                {
                    continue;
                }

                var theirs = problem.Demands[separate.Other].Candidates[choices[separate.Other]].Device;
                if (Apartness.Meet(separate.By, problem.Show.Devices[mine], problem.Show.Devices[theirs]))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private bool KeepsLinksApart(int[] active, int[] choices, WiringPlan wiring)
    {
        var trees = new StreamTrees(problem, wiring);
        foreach (var index in active)
        {
            if (choices[index] < 0)
            {
                continue;
            }

            var mine = trees.LinksOf(problem.Demands[index].Candidates[choices[index]]);
            foreach (var separate in problem.Demands[index].Separations)
            {
                if (
                    separate.By == SeparationBy.Link
                    && choices[separate.Other] >= 0
                    && mine.Overlaps(trees.LinksOf(problem.Demands[separate.Other].Candidates[choices[separate.Other]]))
                )
                {
                    return false;
                }
            }
        }

        return true;
    }
}
