using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search;

/// <summary>Counts what places cost by themselves and against each other. Not thread safe: what one score needs is kept for the next.</summary>
internal sealed class PlacementScorer(AssignmentProblem problem)
{
    private readonly int[] leastNumber = Array.ConvertAll(
        problem.Demands,
        demand => demand.Candidates.Length == 0 ? 0 : demand.Candidates.Min(candidate => candidate.Number)
    );

    private readonly List<int>?[] takenIn = new List<int>?[problem.UsableOutputs.Length];
    private readonly List<(Demand Demand, Candidate Candidate)>?[] membersOf = new List<(Demand Demand, Candidate Candidate)>?[problem.Demands.Length];
    private readonly List<int>?[] devicesOf = new List<int>?[problem.Demands.Length];
    private readonly List<int> groupsTaken = [];
    private readonly List<int> setsSeen = [];
    private readonly List<int> groupsSeen = [];

    /// <summary>Scores what choices cost before any wiring is known.</summary>
    public ChoiceScore Score(int[] active, int[] choices)
    {
        var score = new ChoiceScore();
        var numbers = score.Numbers;
        Forget();
        foreach (var index in active)
        {
            var demand = problem.Demands[index];
            var choice = choices[index];
            if (choice == Evaluator.Undecided)
            {
                numbers[^1] += leastNumber[index];
                continue;
            }

            var candidate = choice >= 0 ? demand.Candidates[choice] : null;
            var failed = candidate?.Failed ?? demand.Weight;
            if (failed > 0)
            {
                numbers[demand.Tier] += failed;
                score.Failed.Add(index);
            }

            if (demand.Existing >= 0 && candidate?.First != demand.Existing)
            {
                numbers[ObjectiveNumbers.Moved(demand.Node.IsHeld)]++;
            }

            if (candidate is null)
            {
                continue;
            }

            numbers[^1] += candidate.Number;
            numbers[ObjectiveNumbers.Distance] += demand.Preferred > 0 ? Math.Abs(candidate.Number - demand.Preferred) : 0;
            AddOrder(numbers, candidate);
            AddSet(numbers, demand, candidate);
            AddGroup(numbers, demand, candidate);
        }

        return score;
    }

    /// <summary>Counts the earlier demands of the port group with a greater number.</summary>
    private void AddOrder(int[] numbers, Candidate candidate)
    {
        var taken = takenIn[candidate.PortGroup] ??= [];
        if (taken.Count == 0)
        {
            groupsTaken.Add(candidate.PortGroup);
        }

        var at = taken.Count;
        while (at > 0 && taken[at - 1] > candidate.Number)
        {
            at--;
        }

        numbers[ObjectiveNumbers.Order] += taken.Count - at;
        taken.Insert(at, candidate.Number);
    }

    private void AddSet(int[] numbers, Demand demand, Candidate candidate)
    {
        if (demand.Set < 0)
        {
            return;
        }

        var members = membersOf[demand.Set] ??= [];
        foreach (var (other, theirs) in members)
        {
            SetCost.Add(numbers, demand, candidate.Device, candidate.Number, other, theirs.Device, theirs.Number);
        }

        members.Add((demand, candidate));
        setsSeen.Add(demand.Set);
    }

    private void AddGroup(int[] numbers, Demand demand, Candidate candidate)
    {
        if (demand.Group < 0)
        {
            return;
        }

        var devices = devicesOf[demand.Group] ??= [];
        if (!devices.Contains(candidate.Device))
        {
            numbers[ObjectiveNumbers.Groups] += devices.Count > 0 ? 1 : 0;
            devices.Add(candidate.Device);
            groupsSeen.Add(demand.Group);
        }
    }

    private void Forget()
    {
        groupsTaken.ForEach(group => takenIn[group]!.Clear());
        setsSeen.ForEach(set => membersOf[set]!.Clear());
        groupsSeen.ForEach(group => devicesOf[group]!.Clear());
        groupsTaken.Clear();
        setsSeen.Clear();
        groupsSeen.Clear();
    }
}
