using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Assignment.Search;

/// <summary>What the places of demands cost, kept up to date demand by demand, with an estimate of the blocks they need. Not thread safe.</summary>
/// <remarks>
/// Costs are keys: the first six numbers, then a number that tells which of the marked demands fail (a greater one is worse), then the eight levels
/// in the order asked for. Keys add up, and compare from the first number on. Blocks are estimates: streams that several receivers share may need fewer.
/// </remarks>
internal sealed class PlacementTally
{
    /// <summary>Numbers of a key.</summary>
    public const int KeyLength = ObjectiveVector.Length + 1;

    /// <summary>Where a key tells who fails.</summary>
    public const int FailedAt = 6;

    /// <summary>Demands that can be marked at a time.</summary>
    public const int MostMarked = 60;

    private readonly AssignmentProblem problem;
    private readonly int[] placeOf = new int[Enum.GetValues<ObjectiveLevel>().Length];
    private readonly int[] claimedBy;
    private readonly List<int>[] inPortGroup;
    private readonly List<int>[] inSet;
    private readonly Dictionary<int, int>[] devicesOfGroup;
    private readonly int[] newInGroup;
    private readonly int[] usedInGroup;
    private readonly long[] mark;
    private readonly BlockEstimate estimate;

    public PlacementTally(AssignmentProblem problem, ObjectiveLevel[] order)
    {
        this.problem = problem;
        foreach (var (place, level) in order.Index())
        {
            placeOf[(int)level] = FailedAt + 1 + place;
        }

        claimedBy = new int[problem.Show.Graph.PointCount];
        Array.Fill(claimedBy, -1);
        inPortGroup = [.. problem.UsableOutputs.Select(_ => new List<int>())];
        inSet = Array.ConvertAll(problem.Demands, _ => new List<int>());
        devicesOfGroup = Array.ConvertAll(problem.Demands, _ => new Dictionary<int, int>());
        newInGroup = new int[problem.UsableOutputs.Length];
        usedInGroup = new int[problem.UsableOutputs.Length];
        mark = new long[problem.Demands.Length];
        Choices = new int[problem.Demands.Length];
        Array.Fill(Choices, Evaluator.Undecided);
        estimate = new BlockEstimate(problem);
    }

    /// <summary>A choice for every demand of the show; <see cref="Evaluator.Undecided"/> for demands not counted.</summary>
    public int[] Choices { get; }

    /// <summary>The key of the demands counted.</summary>
    public long[] Key { get; } = new long[KeyLength];

    /// <summary>Where a level stands in a key.</summary>
    public int PlaceOf(ObjectiveLevel level) => placeOf[(int)level];

    /// <summary>Marks demands, so that keys tell which of them fail: an earlier one counts for more than all later ones.</summary>
    public void Mark(int[] ascending)
    {
        for (var i = 0; i < ascending.Length; i++)
        {
            mark[ascending[i]] = 1L << (MostMarked - 1 - i);
        }
    }

    /// <summary>Takes marks away; no marked demand may be counted.</summary>
    public void Unmark(int[] demands) => Array.ForEach(demands, index => mark[index] = 0);

    /// <summary>True when nothing counted stands against a choice, as far as places alone can tell.</summary>
    public bool Fits(int index, int choice)
    {
        var demand = problem.Demands[index];
        var candidate = demand.Candidates[choice];
        foreach (var point in candidate.Claims)
        {
            if (claimedBy[point] >= 0)
            {
                return false;
            }
        }

        return KeepsSpares(demand, candidate) && KeepsApart(demand, candidate) && estimate.Agrees(candidate);
    }

    private bool KeepsSpares(Demand demand, Candidate candidate)
    {
        if (problem.Options.Spares == 0 || demand.Node.Line is not null)
        {
            return true;
        }

        var used = usedInGroup[candidate.PortGroup];
        foreach (var point in candidate.Claims)
        {
            used += problem.IsSpare[point] ? 1 : 0;
        }

        return newInGroup[candidate.PortGroup] + (candidate.AsksForSpares ? 1 : 0) == 0
            || problem.UsableOutputs[candidate.PortGroup] - used >= problem.Options.Spares;
    }

    private bool KeepsApart(Demand demand, Candidate candidate)
    {
        foreach (var separate in demand.Separations)
        {
            if (Choices[separate.Other] < 0)
            {
                continue;
            }

            var theirs = problem.Demands[separate.Other].Candidates[Choices[separate.Other]].Device;
            if (Apartness.Meet(separate.By, problem.Show.Devices[candidate.Device], problem.Show.Devices[theirs]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Counts a demand, at a place or unplaced.</summary>
    public void Add(int index, int choice)
    {
        Cost(index, choice, Key, 1);
        Choices[index] = choice;
        if (choice < 0)
        {
            return;
        }

        var demand = problem.Demands[index];
        var candidate = demand.Candidates[choice];
        foreach (var point in candidate.Claims)
        {
            claimedBy[point] = index;
        }

        inPortGroup[candidate.PortGroup].Add(index);
        if (demand.Set >= 0)
        {
            inSet[demand.Set].Add(index);
        }

        if (demand.Group >= 0)
        {
            devicesOfGroup[demand.Group][candidate.Device] = devicesOfGroup[demand.Group].GetValueOrDefault(candidate.Device) + 1;
        }

        CountSpares(demand, candidate, 1);
        estimate.Add(candidate);
    }

    /// <summary>Takes a demand back.</summary>
    public void Remove(int index)
    {
        var choice = Choices[index];
        Choices[index] = Evaluator.Undecided;
        if (choice >= 0)
        {
            var demand = problem.Demands[index];
            var candidate = demand.Candidates[choice];
            foreach (var point in candidate.Claims)
            {
                claimedBy[point] = -1;
            }

            inPortGroup[candidate.PortGroup].Remove(index);
            if (demand.Set >= 0)
            {
                inSet[demand.Set].Remove(index);
            }

            if (demand.Group >= 0 && --devicesOfGroup[demand.Group][candidate.Device] == 0)
            {
                devicesOfGroup[demand.Group].Remove(candidate.Device);
            }

            CountSpares(demand, candidate, -1);
            estimate.Remove(candidate);
        }

        Cost(index, choice, Key, -1);
    }

    private void CountSpares(Demand demand, Candidate candidate, int change)
    {
        if (problem.Options.Spares == 0 || demand.Node.Line is not null)
        {
            return;
        }

        newInGroup[candidate.PortGroup] += candidate.AsksForSpares ? change : 0;
        foreach (var point in candidate.Claims)
        {
            usedInGroup[candidate.PortGroup] += problem.IsSpare[point] ? change : 0;
        }
    }

    /// <summary>Adds what a demand would cost beside those counted to a key, so many times.</summary>
    public void Cost(int index, int choice, Span<long> key, int times)
    {
        var demand = problem.Demands[index];
        var candidate = choice >= 0 ? demand.Candidates[choice] : null;
        var failed = candidate?.Failed ?? demand.Weight;
        key[demand.Tier] += times * failed;
        key[FailedAt] += failed > 0 ? times * mark[index] : 0;
        if (demand.Existing >= 0 && candidate?.First != demand.Existing)
        {
            key[ObjectiveNumbers.Moved(demand.Node.IsHeld)] += times;
        }

        if (candidate is null)
        {
            return;
        }

        key[PlaceOf(ObjectiveLevel.Numbers)] += times * candidate.Number;
        var distance = demand.Preferred > 0 ? Math.Abs(candidate.Number - demand.Preferred) : 0;
        var opposed = 0;
        foreach (var other in inPortGroup[candidate.PortGroup])
        {
            opposed += other != index && problem.Demands[other].Candidates[Choices[other]].Number > candidate.Number == other < index ? 1 : 0;
        }

        key[PlaceOf(ObjectiveLevel.Order)] += times * opposed;
        if (demand.Set >= 0)
        {
            foreach (var other in inSet[demand.Set])
            {
                var theirs = problem.Demands[other];
                var place = theirs.Candidates[Choices[other]];
                if (
                    theirs.Part != demand.Part
                    && theirs.Node.Entry == demand.Node.Entry
                    && place.Device != candidate.Device
                    && place.Number != candidate.Number
                )
                {
                    key[PlaceOf(ObjectiveLevel.Sets)] += times;
                    distance += Math.Abs(place.Number - candidate.Number);
                }
            }
        }

        key[PlaceOf(ObjectiveLevel.Distance)] += times * distance;
        if (demand.Group >= 0 && devicesOfGroup[demand.Group] is { Count: > 0 } devices && !devices.ContainsKey(candidate.Device))
        {
            key[PlaceOf(ObjectiveLevel.Groups)] += times;
        }

        var (transmit, receive) = estimate.Cost(candidate);
        key[PlaceOf(ObjectiveLevel.TransmitBlocks)] += times * transmit;
        key[PlaceOf(ObjectiveLevel.ReceiveBlocks)] += times * receive;
    }
}
