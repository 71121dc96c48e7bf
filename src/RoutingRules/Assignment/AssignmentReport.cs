using RoutingRules.Model;
using RoutingRules.Profiles;
using RoutingRules.Resolving;

namespace RoutingRules.Assignment;

/// <summary>Turns choices into the account that a caller gets.</summary>
internal sealed class AssignmentReport(AssignmentProblem problem, Evaluator evaluator, FirmDemands firm, int[] choices, ChoiceScore score, int provenBySearch)
{
    private readonly SignalGraph graph = problem.Show.Graph;

    public AssignmentResult Build(Show result, ResolvedShow resolved, PatchWriter writer, RoutingEngine engine)
    {
        var contradicts = firm.Contradictions.Count > 0;
        var vector = new ObjectiveVector { Values = ValueList.Create<int>(score.Numbers) };
        var proven = ProvenPrefix();
        return new AssignmentResult
        {
            Show = result,
            Status = contradicts ? AssignmentStatus.PinsContradict : proven == ObjectiveVector.Length ? AssignmentStatus.Optimal : AssignmentStatus.Feasible,
            ProvenNumbers = contradicts ? 0 : proven,
            Objective = contradicts ? null : vector,
            Placements = Placements(),
            Unplaced = Unplaced(resolved),
            Moved = problem.Demands.Where(IsMoved).Select(demand => demand.Node.Key).ToValueList(),
            Contradictions = firm.Contradictions.Select(set => set.Select(index => problem.Demands[index].Node.Key).ToValueList()).ToValueList(),
            RemovedStreams = writer.RemovedStreams.ToValueList(),
            Silenced = Silenced(resolved.Graph),
            Cleared = writer.Cleared.Distinct().Select(point => graph.Address(point)).ToValueList(),
            Notes = Notes(),
            Utilisation = UtilisationTable.Of(problem, choices, resolved),
            Links = LinkTable.Of(problem, resolved),
            Check = engine.Check(resolved),
        };
    }

    /// <summary>What the search proved, and the numbers after it that are 0 and cannot be smaller.</summary>
    private int ProvenPrefix()
    {
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
                placements.Add(new Placement
                {
                    Demand = demand.Node.Key,
                    At = graph.Address(new PointIndex(candidate.First), demand.Node.Width),
                    IsPinned = demand.Node.IsPinned,
                    IsKept = candidate.IsExisting,
                });
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
                    if (!Array.Exists(reached, delivery => delivery.Sink == line.Sinks[entry].Value))
                    {
                        unplaced.Add(new UnplacedDemand { Demand = demand.Node.Key, Sink = line.Model.To[entry], Reason = UnplacedReasons.Of(demand, entry) });
                    }
                }
            }
        }

        return unplaced.ToValueList();
    }

    private bool IsMoved(Demand demand) =>
        demand.Existing >= 0 && (choices[demand.Index] < 0 || demand.Candidates[choices[demand.Index]].First != demand.Existing);

    private ValueList<Point> Silenced(SignalGraph result)
    {
        var silenced = new List<Point>();
        foreach (var device in problem.Show.Devices)
        {
            foreach (var group in device.Groups)
            {
                for (var i = 0; group.Kind == PortKind.Output && i < group.Count; i++)
                {
                    var point = device.FirstPoint + group.Offset + i;
                    if (graph.Origins[point] >= 0 && result.Origins[point] < 0)
                    {
                        silenced.Add(graph.Address(new PointIndex(point)));
                    }
                }
            }
        }

        return silenced.ToValueList();
    }

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
        }

        return notes.ToValueList();
    }
}
