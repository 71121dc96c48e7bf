using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Signal.Graph;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Places a part in list order, component by component, and says how good any placement can be.</summary>
internal sealed class DemandOrderSearch(AssignmentProblem problem, Evaluator evaluator, Part part, CancellationToken cancellation)
{
    private const int MostStates = 3000;

    private const int LeastStates = 30;
    private const long WiringBudget = 20_000;

    private int[]? bound;
    private int[]? floorOfAll;
    private bool hasShares;

    /// <summary>Searches; null when the placements found cannot be wired together or the search does not fit the part.</summary>
    /// <param name="budget">Options to try, roughly.</param>
    public SearchResult? Run(long budget)
    {
        var floor = new WiringFloor(problem);
        var choices = GreedySearch.NewChoices(problem);
        var least = new int[ObjectiveVector.Length];
        var isComplete = true;
        foreach (var demands in Components())
        {
            if (Place(floor, demands, mayShare: false, budget) is not { } placed)
            {
                return null;
            }

            placed.List.Read(placed.Last, choices);

            // Blocks that may share count for less, which gives the bound but would lead astray.
            var best = placed.List.IsPlain ? placed : Place(floor, demands, mayShare: true, budget);
            isComplete &= best is { IsComplete: true };
            for (var i = 0; best is not null && i < least.Length; i++)
            {
                least[At(i)] += best.Value.Last.Cost[i];
            }
        }

        var transmit = ObjectiveNumbers.TransmitBlocks;
        hasShares = least[transmit] % WiringFloor.WholeBlock != 0;
        least[transmit] = ((least[transmit] + WiringFloor.WholeBlock - 1) / WiringFloor.WholeBlock) + FreelySent(floor);
        bound = isComplete ? least : null;
        var score = Array.Exists(part.Active, index => part.IsFirm[index] && choices[index] < 0)
            ? null
            : evaluator.Evaluate(part.Active, choices, null, WiringBudget, null, out _);
        if (score is null)
        {
            return null;
        }

        var proven = Proven(score);
        return new SearchResult
        {
            Choices = choices,
            Score = score,
            ProvenNumbers = proven,
        };
    }

    private (OrderProblem List, OrderState Last, bool IsComplete)? Place(WiringFloor floor, int[] demands, bool mayShare, long budget)
    {
        var list = new OrderProblem(problem, floor, part, demands, mayShare);
        var beam = new OrderBeam(problem, list, evaluator.Order);
        var options = Math.Max(1L, list.Options.Sum(of => of.Select(option => (option.Group, option.Blocks.FirstOrDefault(-1))).Distinct().LongCount()));
        var width = (int)
            Math.Clamp(budget * OrderBeam.StepsPerUnit / beam.StepWork * demands.Length / Math.Max(1, part.Active.Length) / options, LeastStates, MostStates);
        var last = beam.Run(width, cancellation);
        evaluator.Spend(beam.Work);
        return last is null ? null : (list, last, beam.IsComplete);
    }

    /// <summary>
    /// How many numbers of a score, in the order asked for, are the smallest possible. Up to the list order the score must meet what holds for every
    /// placement; from there on every placement as good opposes the list order nowhere, and a complete search has seen all of those.
    /// </summary>
    public int Proven(ChoiceScore score)
    {
        floorOfAll ??= Least();
        var proven = 0;
        while (proven < ObjectiveVector.Length && score.Numbers[At(proven)] == floorOfAll[At(proven)])
        {
            proven++;
        }

        var order = ObjectiveNumbers.Levels + Array.IndexOf(evaluator.Order, ObjectiveLevel.Order);
        while (
            bound is not null && FailsOnlyWhatMust(score) && proven > order && proven < ObjectiveVector.Length && score.Numbers[At(proven)] == bound[At(proven)]
        )
        {
            // With parts of blocks rounded up, placements that cost other parts are as good and were not kept.
            if (At(proven++) == ObjectiveNumbers.TransmitBlocks && hasShares)
            {
                break;
            }
        }

        return proven;
    }

    /// <summary>True when every failed delivery would fail with all other demands away: then who fails is settled.</summary>
    private bool FailsOnlyWhatMust(ChoiceScore score)
    {
        var must = 0;
        foreach (var index in part.Active)
        {
            must += problem.Demands[index].LeastFailed(part.Choices[index]);
        }

        return must == score.Numbers[..4].Sum();
    }

    /// <summary>Takes note of what must stay without a place, by tier, as somebody else counted it.</summary>
    public void Limit(int[] lost)
    {
        floorOfAll ??= Least();
        if (lost.AsSpan().SequenceCompareTo(floorOfAll.AsSpan(0, lost.Length)) > 0)
        {
            lost.CopyTo(floorOfAll, 0);
        }
    }

    private int At(int place) => LevelOrder.At(evaluator.Order, place);

    /// <summary>A vector that no placement can go below on any level.</summary>
    private int[] Least()
    {
        var least = new int[ObjectiveVector.Length];
        var failed = new int[ObjectiveNumbers.Tiers];
        foreach (var component in Components())
        {
            foreach (var (tier, count) in new DeficitBound(problem, part.Choices).UpToTier(component).Index())
            {
                failed[tier] += count;
            }
        }

        for (var tier = 0; tier < failed.Length; tier++)
        {
            // What is proven to fail in the tiers before stands; the rest of the deficit falls on this one.
            least[tier] = Math.Max(0, failed[tier] - least.AsSpan(0, tier).ToArray().Sum());
        }

        var firm = new List<Candidate>();
        foreach (var index in part.Active)
        {
            var demand = problem.Demands[index];
            var choices = part.Choices[index];
            least[ObjectiveNumbers.Moved(demand.Node.IsHeld)] +=
                demand.Existing >= 0 && !Array.Exists(choices, choice => demand.Candidates[choice].First == demand.Existing) ? 1 : 0;
            if (!part.IsFirm[index] || choices.Length == 0)
            {
                continue;
            }

            least[ObjectiveNumbers.Distance] += demand.Preferred > 0 ? choices.Min(choice => Math.Abs(demand.Candidates[choice].Number - demand.Preferred)) : 0;
            if (choices.Length == 1)
            {
                var candidate = demand.Candidates[choices[0]];
                least[ObjectiveNumbers.Order] += firm.Count(earlier => earlier.PortGroup == candidate.PortGroup && earlier.Number > candidate.Number);
                firm.Add(candidate);
            }
        }

        return least;
    }

    /// <summary>Transmit blocks that sources need which only freely routed sinks take; no block that a full fixed one takes has room for them.</summary>
    private int FreelySent(WiringFloor floor)
    {
        var sources = new Dictionary<int, int>();
        foreach (var index in part.Active)
        {
            if (IsFreelySent(floor, index))
            {
                var sender = problem.Demands[index].Candidates[part.Choices[index][0]].Deliveries[0].Sender;
                sources[sender] = sources.GetValueOrDefault(sender) + problem.Demands[index].Node.Width;
            }
        }

        return sources.Sum(entry => (entry.Value + floor.TransmitWidth(entry.Key) - 1) / floor.TransmitWidth(entry.Key));
    }

    private bool IsFreelySent(WiringFloor floor, int index)
    {
        var demand = problem.Demands[index];
        return demand.Node.Line is null
            && part.Choices[index].Length > 0
            && Array.TrueForAll(
                part.Choices[index],
                choice =>
                    Array.TrueForAll(
                        demand.Candidates[choice].Deliveries,
                        delivery => floor.IsCounted(delivery) && problem.FixedBlockOf(delivery.Sink) < 0 && floor.IsUnique(delivery.Source)
                    )
            );
    }

    /// <summary>Demands that meet on a device, or in a set, a group, a separation or a claim.</summary>
    private IEnumerable<int[]> Components()
    {
        var devices = problem.Demands.Length;
        var sets = devices + problem.DeviceCount;
        var groups = sets + problem.Demands.Length;
        var points = groups + problem.Demands.Length;
        var nodes = new DisjointSets(points + problem.Show.Graph.PointCount);
        foreach (var index in part.Active)
        {
            var demand = problem.Demands[index];
            foreach (var choice in part.Choices[index])
            {
                nodes.Join(index, devices + demand.Candidates[choice].Device);
                foreach (var point in demand.Candidates[choice].Claims)
                {
                    nodes.Join(index, points + point);
                }
            }

            if (demand.Set >= 0)
            {
                nodes.Join(index, sets + demand.Set);
            }

            if (demand.Group >= 0)
            {
                nodes.Join(index, groups + demand.Group);
            }

            foreach (var separate in demand.Separations)
            {
                nodes.Join(index, separate.Other);
            }
        }

        return part.Active.GroupBy(nodes.Find).Select(component => component.ToArray());
    }
}
