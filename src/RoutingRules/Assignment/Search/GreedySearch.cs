using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search;

/// <summary>Places demands one by one where the score suffers least, then improves by moving and swapping until nothing gets better.</summary>
internal sealed class GreedySearch(AssignmentProblem problem, Evaluator evaluator, Part part, CancellationToken cancellation)
{
    private const long WiringBudget = 200;

    private readonly int[] choices = NewChoices(problem);
    private ChoiceScore? score;

    /// <summary>The choices found, those placed so far when cancelled; null when the firm demands cannot stand together.</summary>
    /// <param name="start">Choices to improve; null to begin with none.</param>
    /// <param name="workLimit">Evaluator work after which improving stops.</param>
    public SearchResult? Run(SearchResult? start, long workLimit)
    {
        if (start is not null)
        {
            start.Choices.CopyTo(choices, 0);
            score = start.Score;
            FillUp();
            Improve(workLimit);
            return new SearchResult
            {
                Choices = choices,
                Score = score,
                ProvenNumbers = 0,
            };
        }

        foreach (var index in part.Active)
        {
            choices[index] = Evaluator.Unplaced;
        }

        // Firm demands may share a block, so that one cannot be judged while another's output still counts as idle.
        foreach (var index in part.Active.Where(index => part.IsFirm[index] && part.Choices[index].Length == 1))
        {
            choices[index] = part.Choices[index][0];
        }

        foreach (var index in part.Active.Where(index => part.IsFirm[index] && part.Choices[index].Length != 1).OrderBy(index => part.Choices[index].Length))
        {
            if (!Place(index, isFirm: true))
            {
                return null;
            }
        }

        score = evaluator.Evaluate(part.Active, choices, null, WiringBudget, null, out _);
        if (score is null)
        {
            return null;
        }

        FillUp();
        Improve(workLimit);
        return score is null
            ? null
            : new SearchResult
            {
                Choices = choices,
                Score = score,
                ProvenNumbers = 0,
            };
    }

    public static int[] NewChoices(AssignmentProblem problem)
    {
        var choices = new int[problem.Demands.Length];
        Array.Fill(choices, Evaluator.Undecided);
        return choices;
    }

    /// <summary>Important demands first; then those that stay, pairs, and those with few ways.</summary>
    private IEnumerable<int> Sequence() =>
        part
            .Active.Where(index => choices[index] == Evaluator.Unplaced)
            .OrderBy(index => problem.Demands[index].Tier)
            .ThenBy(index => problem.Demands[index].Existing >= 0 ? 0 : 1)
            .ThenBy(index => part.Choices[index].Length);

    private void FillUp()
    {
        foreach (var index in Sequence())
        {
            Place(index, isFirm: false);
        }
    }

    private bool Place(int index, bool isFirm)
    {
        var best = Evaluator.Unplaced;
        var bestScore = isFirm ? null : score;
        foreach (var choice in part.Choices[index])
        {
            if (!isFirm && cancellation.IsCancellationRequested)
            {
                break;
            }

            if (evaluator.ClaimantOf(part.Active, choices, problem.Demands[index].Candidates[choice], index) >= 0)
            {
                continue;
            }

            choices[index] = choice;
            var found = evaluator.Evaluate(part.Active, choices, null, WiringBudget, bestScore, out _);
            if (found is not null && (bestScore is null || found.CompareTo(bestScore, evaluator.Order) < 0))
            {
                best = choice;
                bestScore = found;
            }
        }

        choices[index] = best;
        score = bestScore;
        return best >= 0;
    }

    private void Improve(long workLimit)
    {
        for (var improved = true; improved && evaluator.Work < workLimit; )
        {
            improved = false;
            foreach (var index in part.Active)
            {
                foreach (var choice in part.Choices[index])
                {
                    if (evaluator.Work >= workLimit || cancellation.IsCancellationRequested)
                    {
                        return;
                    }

                    improved |= choice != choices[index] && Try(index, choice);
                }

                improved |= !part.IsFirm[index] && choices[index] >= 0 && TryLeaveOut(index);
            }
        }
    }

    private bool TryLeaveOut(int index)
    {
        var before = choices[index];
        choices[index] = Evaluator.Unplaced;
        if (Accept())
        {
            return true;
        }

        choices[index] = before;
        return false;
    }

    /// <summary>Moves a demand; whoever is in the way takes its place or the first other place that makes things better.</summary>
    private bool Try(int index, int choice)
    {
        var before = choices[index];
        var wanted = problem.Demands[index].Candidates[choice];
        var inTheWay = evaluator.ClaimantOf(part.Active, choices, wanted, index);
        choices[index] = choice;
        if (inTheWay < 0)
        {
            if (Accept())
            {
                return true;
            }

            choices[index] = before;
            return false;
        }

        var theirs = choices[inTheWay];
        foreach (var option in part.Choices[inTheWay])
        {
            if (option == theirs || problem.Demands[inTheWay].Candidates[option].Claims.AsSpan().IndexOfAny(wanted.Claims) >= 0)
            {
                continue;
            }

            choices[inTheWay] = option;
            if (evaluator.ClaimantOf(part.Active, choices, problem.Demands[inTheWay].Candidates[option], inTheWay) < 0 && Accept())
            {
                return true;
            }
        }

        choices[inTheWay] = Evaluator.Unplaced;
        if (!part.IsFirm[inTheWay] && Accept())
        {
            return true;
        }

        choices[inTheWay] = theirs;
        choices[index] = before;
        return false;
    }

    private bool Accept()
    {
        var found = evaluator.Evaluate(part.Active, choices, null, WiringBudget, score, out _);
        if (found is null || found.CompareTo(score!, evaluator.Order) >= 0)
        {
            return false;
        }

        score = found;
        return true;
    }
}
