using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Search;
using RoutingRules.Assignment.Strategies;
using RoutingRules.Checking;
using RoutingRules.Model;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment.Result;

/// <summary>Turns choices into the account that a caller gets.</summary>
internal sealed class AssignmentReport(
    AssignmentProblem problem,
    Evaluator evaluator,
    PinsAndHolds firm,
    int[] choices,
    ChoiceScore score,
    int provenBySearch,
    bool wasStopped
)
{
    private readonly SignalGraph graph = problem.Show.Graph;

    public AssignmentResult Build(Show result, ResolvedShow resolved, PatchWriter writer, Checker checker)
    {
        var contradicts = firm.Contradictions.Count > 0;
        var vector = new ObjectiveVector { Values = ValueList.Create<int>(score.Numbers) };
        var proven = ProvenPrefix();
        var changes = new ResultChanges(problem.Show, resolved.Graph);
        return new AssignmentResult
        {
            Show = result,
            Status =
                contradicts ? AssignmentStatus.PinsContradict
                : proven == ObjectiveVector.Length ? AssignmentStatus.Optimal
                : wasStopped ? AssignmentStatus.Stopped
                : AssignmentStatus.Feasible,
            ProvenNumbers = contradicts ? 0 : proven,
            Objective = contradicts ? null : vector,
            Placements = Placements(),
            Unplaced = Unplaced(resolved),
            Moved = problem.Demands.Where(IsMoved).Select(demand => demand.Node.Key).ToValueList(),
            Contradictions = firm.Contradictions.Select(set => set.Select(index => problem.Demands[index].Node.Key).ToValueList()).ToValueList(),
            RemovedStreams = writer.RemovedStreams.ToValueList(),
            RemovedReceivers = changes.RemovedReceivers(),
            Silenced = changes.Silenced(),
            Cleared = changes.Cleared(writer.Cleared),
            Notes = Notes(),
            Utilisation = UtilisationTable.Of(problem, choices, resolved),
            Links = LinkTable.Of(problem, resolved),
            Check = checker.Check(resolved),
        };
    }

    /// <summary>What the search proved, and the numbers after it that are 0 and cannot be smaller; nothing where routes were left out.</summary>
    private int ProvenPrefix()
    {
        if (problem.Untried.Count > 0)
        {
            return 0;
        }

        var proven = provenBySearch;
        while (proven < ObjectiveVector.Length && score.Numbers[LevelOrder.At(evaluator.Order, proven)] == 0)
        {
            proven++;
        }

        return proven;
    }

    private ValueList<Placement> Placements()
    {
        var placements = new List<Placement>();
        foreach (var demand in problem.Demands)
        {
            if (choices[demand.Index] >= 0)
            {
                var candidate = demand.Candidates[choices[demand.Index]];
                placements.Add(
                    new Placement
                    {
                        Demand = demand.Node.Key,
                        At = graph.Address(new PointIndex(candidate.First), demand.Node.Width),
                        IsPinned = demand.Node.IsPinned,
                        IsKept = candidate.IsExisting,
                    }
                );
            }
        }

        return placements.ToValueList();
    }

    private ValueList<UnplacedDemand> Unplaced(ResolvedShow result)
    {
        var reasons = new UnplacedReasons(problem, evaluator, firm, choices, result);
        var unplaced = new List<UnplacedDemand>();
        foreach (var demand in problem.Demands)
        {
            if (choices[demand.Index] < 0)
            {
                unplaced.Add(new UnplacedDemand { Demand = demand.Node.Key, Reason = reasons.Of(demand) });
            }
            else if (demand.Node.Line is { } line && demand.Candidates[choices[demand.Index]].Failed > 0)
            {
                var reached = demand.Candidates[choices[demand.Index]].Deliveries;
                for (var entry = 0; entry < line.Sinks.Count; entry++)
                {
                    if (!line.IsRepeated(entry) && !Array.Exists(reached, delivery => delivery.Sink == line.Sinks[entry].Value))
                    {
                        unplaced.Add(
                            new UnplacedDemand
                            {
                                Demand = demand.Node.Key,
                                Sink = line.Model.To[entry],
                                Reason = UnplacedReasons.Of(demand, entry),
                            }
                        );
                    }
                }
            }
        }

        return unplaced.ToValueList();
    }

    private bool IsMoved(Demand demand) =>
        demand.Existing >= 0 && (choices[demand.Index] < 0 || demand.Candidates[choices[demand.Index]].First != demand.Existing);

    /// <summary>What is noted when a hold had to yield.</summary>
    internal static string HoldNote(string demand, PointRange at) => $"{demand} was held at {at} but could not stay there.";

    private ValueList<string> Notes()
    {
        var notes = new List<string>();
        foreach (var index in firm.Yielded)
        {
            var demand = problem.Demands[index];
            notes.Add(HoldNote(demand.Node.Key, graph.Address(new PointIndex(demand.Existing), demand.Node.Width)));
        }

        foreach (var demand in problem.Demands)
        {
            if (choices[demand.Index] < 0)
            {
                continue;
            }

            var candidate = demand.Candidates[choices[demand.Index]];
            for (var position = 0; position < demand.Node.Width; position++)
            {
                if (problem.Show.MarkOf(new PointIndex(candidate.First + position)) is { } mark)
                {
                    var state = mark.IsDead ? "is marked as not working" : "is reserved";
                    notes.Add($"{demand.Node.Key} is pinned to {graph.Address(new PointIndex(candidate.First + position))}, which {state}.");
                }
            }

            if (Exposure.IsPrivate(demand.Node) && problem.Exposure.Leads(candidate.First))
            {
                notes.Add(
                    $"{demand.Node.Key} is pinned to {graph.Address(new PointIndex(candidate.First), demand.Node.Width)}, from where loudspeakers play it; "
                        + $"ask whether {demand.Node.Feed!.Model.Role} shall be heard there."
                );
            }
        }

        if (problem.Untried.Count > 0)
        {
            var names = string.Join(", ", problem.Untried.Select(device => device.Id));
            notes.Add(
                $"Blocks of channels were routed inside {names} only as they are patched now or from the same numbers; "
                    + "whether other blocks would do better was not tried."
            );
        }

        return notes.ToValueList();
    }
}
