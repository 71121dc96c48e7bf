using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Model;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Demands that share devices, sets, groups or separations, laid out for the search in list order.</summary>
/// <remarks>Demands that are firm at one place, or served already, stand; the others have options.</remarks>
internal sealed class OrderProblem
{
    private readonly AssignmentProblem problem;
    private readonly Part part;
    private readonly LocalNumbers devices = new();
    private readonly LocalNumbers groups = new();
    private readonly HashSet<int> taken = [];
    private readonly OrderUses uses;
    private readonly BlockSenders senders;

    public OrderProblem(AssignmentProblem problem, WiringFloor floor, Part part, int[] demands, bool mayShare)
    {
        this.problem = problem;
        this.part = part;
        uses = new OrderUses(problem, floor, part, mayShare, devices);
        senders = new BlockSenders(problem);
        Demands = demands;
        Options = new OrderOption[demands.Length][];
        Standing = new int[demands.Length];
        Array.Fill(Standing, -1);
        foreach (var isFirm in new[] { true, false })
        {
            for (var at = 0; at < demands.Length; at++)
            {
                Standing[at] = Standing[at] < 0 && part.IsFirm[demands[at]] == isFirm ? StandingChoice(demands[at]) : Standing[at];
                if (Standing[at] >= 0)
                {
                    taken.UnionWith(problem.Demands[demands[at]].Candidates[Standing[at]].Claims);
                    senders.Note(problem.Demands[demands[at]], problem.Demands[demands[at]].Candidates[Standing[at]]);
                }
            }
        }

        for (var at = 0; at < demands.Length; at++)
        {
            Options[at] = Standing[at] >= 0 ? [] : [.. Kept(at).Select(choice => Option(at, choice))];
        }

        for (var at = 0; at < demands.Length; at++)
        {
            if (Standing[at] >= 0)
            {
                DeviceOf(demands[at], Standing[at]);
            }
        }

        Start = new int[ObjectiveVector.Length];
        PoolStart = CountStanding();
        Pools = [.. uses.Pools];
    }

    /// <summary>Positions of the demands, ascending.</summary>
    public int[] Demands { get; }

    /// <summary>For each demand its options, by device and number; empty for demands that stand and those without any.</summary>
    public OrderOption[][] Options { get; }

    /// <summary>For each demand the choice it stands at; -1 for none.</summary>
    public int[] Standing { get; }

    /// <summary>The vector of what stands.</summary>
    public int[] Start { get; }

    public OrderPool[] Pools { get; }

    /// <summary>Sources of demands that stand, by pool.</summary>
    public int[] PoolStart { get; }

    /// <summary>True when no blocks can be shared beyond what the search counts, so that its costs are bounds as they are.</summary>
    public bool IsPlain => uses.IsPlain;

    public int DeviceCount => devices.Count;

    public int GroupCount => groups.Count;

    /// <summary>Blocks that demands that stand use, with their marks.</summary>
    public IReadOnlyDictionary<int, int> Touched => uses.Touched;

    /// <summary>Usable outputs of a group that nothing that stands takes.</summary>
    public int FreeIn(int group)
    {
        var used = 0;
        for (var at = 0; at < Demands.Length; at++)
        {
            if (
                Standing[at] >= 0
                && problem.Demands[Demands[at]] is { Node.Line: null } demand
                && demand.Candidates[Standing[at]] is var candidate
                && candidate.PortGroup == groups[group]
            )
            {
                used += candidate.Claims.Count(point => problem.IsSpare[point]);
            }
        }

        return problem.UsableOutputs[groups[group]] - used;
    }

    /// <summary>Position of a choice's device among those of the search.</summary>
    public int DeviceOf(int demand, int choice) => devices.Of(problem.Demands[demand].Candidates[choice].Device);

    /// <summary>True when what stands on two devices of the search shares what it must not.</summary>
    public bool Meet(SeparationBy by, int device, int other) => Apartness.Meet(by, problem.Show.Devices[devices[device]], problem.Show.Devices[devices[other]]);

    /// <summary>True when two devices of the search hang on the same supplies, or no demand asks about supplies.</summary>
    public bool HangAlike(int device, int other) =>
        !Array.Exists(Demands, index => problem.Demands[index].Separations.Exists(separate => separate.By == SeparationBy.Power))
        || problem.Show.Devices[devices[device]].Model.Power.ToHashSet().SetEquals(problem.Show.Devices[devices[other]].Model.Power);

    /// <summary>Writes the choices that lead to a last state.</summary>
    public void Read(OrderState last, int[] choices)
    {
        var state = last;
        for (var at = Demands.Length - 1; at >= 0; at--)
        {
            if (Standing[at] >= 0)
            {
                choices[Demands[at]] = Standing[at];
                continue;
            }

            choices[Demands[at]] = state!.Option?.Choice ?? Evaluator.Unplaced;
            state = state.Before;
        }
    }

    private int StandingChoice(int index)
    {
        var demand = problem.Demands[index];
        var best = -1;
        foreach (var choice in part.Choices[index])
        {
            var candidate = demand.Candidates[choice];
            if (
                (candidate.IsExisting || (part.IsFirm[index] && part.Choices[index].Length == 1))
                && (best < 0 || candidate.Failed < demand.Candidates[best].Failed)
            )
            {
                best = choice;
            }
        }

        return best >= 0 && Array.TrueForAll(demand.Candidates[best].Claims, point => !taken.Contains(point)) ? best : -1;
    }

    /// <summary>Choices whose points nothing that stands claims; of several at one point those that fail least.</summary>
    private List<int> Kept(int at)
    {
        var demand = problem.Demands[Demands[at]];
        var kept = new List<int>();
        foreach (var choice in part.Choices[Demands[at]])
        {
            var candidate = demand.Candidates[choice];
            if (Array.Exists(candidate.Claims, taken.Contains) || senders.IsFedByAnother(demand, candidate) || MeetsStanding(demand, candidate))
            {
                continue;
            }

            kept.RemoveAll(other => demand.Candidates[other].First == candidate.First && demand.Candidates[other].Failed > candidate.Failed);
            if (!kept.Exists(other => demand.Candidates[other].First == candidate.First && demand.Candidates[other].Failed < candidate.Failed))
            {
                kept.Add(choice);
            }
        }

        return kept;
    }

    private bool MeetsStanding(Demand demand, Candidate candidate) =>
        demand.Separations.Exists(separate =>
            Array.IndexOf(Demands, separate.Other) is >= 0 and var at
            && Standing[at] >= 0
            && Apartness.Meet(
                separate.By,
                problem.Show.Devices[candidate.Device],
                problem.Show.Devices[problem.Demands[separate.Other].Candidates[Standing[at]].Device]
            )
        );

    private OrderOption Option(int at, int choice)
    {
        var index = Demands[at];
        var demand = problem.Demands[index];
        var candidate = demand.Candidates[choice];
        var (blocks, marks, added) = uses.Use(demand, candidate);
        return new OrderOption
        {
            Choice = choice,
            Device = devices.Of(candidate.Device),
            Group = groups.Of(candidate.PortGroup),
            Number = candidate.Number,
            Width = demand.Node.Width,
            Cost = Cost(index, candidate, includeLater: true),
            Blocks = blocks,
            Marks = marks,
            Pools = added,
            Sender = senders.Of(demand, candidate),
            AsksForSpares = candidate.AsksForSpares,
            Spares = candidate.Claims.Count(point => problem.IsSpare[point]),
        };
    }

    /// <summary>What a place costs by itself and against demands that stand.</summary>
    private int[] Cost(int index, Candidate candidate, bool includeLater)
    {
        var demand = problem.Demands[index];
        var cost = new int[ObjectiveVector.Length];
        cost[demand.Tier] = candidate.Failed;
        if (demand.Existing >= 0 && candidate.First != demand.Existing)
        {
            cost[ObjectiveNumbers.Moved(demand.Node.IsHeld)] = 1;
        }

        cost[ObjectiveNumbers.Numbers] = candidate.Number;
        cost[ObjectiveNumbers.Distance] = demand.Preferred > 0 ? Math.Abs(candidate.Number - demand.Preferred) : 0;
        for (var at = 0; at < Demands.Length; at++)
        {
            var other = Demands[at];
            if (Standing[at] < 0 || other == index || (!includeLater && other > index))
            {
                continue;
            }

            var theirs = problem.Demands[other].Candidates[Standing[at]];
            if (theirs.PortGroup == candidate.PortGroup && theirs.Number > candidate.Number == other < index)
            {
                cost[ObjectiveNumbers.Order]++;
            }

            SetCost.Add(cost, demand, candidate.Device, candidate.Number, problem.Demands[other], theirs.Device, theirs.Number);
        }

        return cost;
    }

    /// <summary>Adds what stands to the vector, and gives its sources by pool.</summary>
    private int[] CountStanding()
    {
        var devicesOf = new Dictionary<int, HashSet<int>>();
        var poolStart = new List<int>();
        for (var at = 0; at < Demands.Length; at++)
        {
            if (Standing[at] < 0)
            {
                continue;
            }

            var demand = problem.Demands[Demands[at]];
            var candidate = demand.Candidates[Standing[at]];
            foreach (var (level, cost) in Cost(demand.Index, candidate, includeLater: false).Index())
            {
                Start[level] += cost;
            }

            if (
                demand.Group >= 0
                && (devicesOf.TryGetValue(demand.Group, out var known) ? known : devicesOf[demand.Group] = []) is var of
                && of.Add(candidate.Device)
                && of.Count > 1
            )
            {
                Start[ObjectiveNumbers.Groups]++;
            }

            var (blocks, marks, added) = uses.UseStanding(demand, candidate);
            for (var i = 0; i < blocks.Length; i++)
            {
                uses.Touch(Start, blocks[i], marks[i], demand.Node.Line is not null);
            }

            foreach (var (pool, amount) in added)
            {
                poolStart.AddRange(new int[Math.Max(0, uses.Pools.Count - poolStart.Count)]);
                Start[ObjectiveNumbers.Levels + (int)uses.Pools[pool].Level] += uses.Pools[pool].Cost(poolStart[pool], amount);
                poolStart[pool] += amount;
            }
        }

        return [.. poolStart, .. new int[uses.Pools.Count - poolStart.Count]];
    }
}
