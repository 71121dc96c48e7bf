using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;
using RoutingRules.Model;
using RoutingRules.Resolving;
using RoutingRules.Signal.Existing;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Demands that share devices, sets, groups or separations, laid out for the search in list order.</summary>
/// <remarks>Demands that are firm at one place, or served already, stand; the others have options.</remarks>
internal sealed class OrderProblem
{
    private readonly AssignmentProblem problem;
    private readonly WiringFloor floor;
    private readonly Part part;
    private readonly bool mayShare;
    private readonly List<int> devices = [];
    private readonly List<int> groups = [];
    private readonly List<OrderPool> pools = [];
    private readonly Dictionary<(int Receiver, int Sender, ObjectiveLevel Level), int> poolOf = [];
    private readonly List<int> receivers = [];
    private readonly HashSet<int> taken = [];
    private readonly Dictionary<int, int> touched = [];
    private readonly Dictionary<int, int> senderOf = [];

    public OrderProblem(AssignmentProblem problem, WiringFloor floor, Part part, int[] demands, bool mayShare)
    {
        this.mayShare = mayShare;
        this.problem = problem;
        this.floor = floor;
        this.part = part;
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
                    NoteSender(problem.Demands[demands[at]], problem.Demands[demands[at]].Candidates[Standing[at]]);
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
        Pools = [.. pools];
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
    public bool IsPlain { get; private set; } = true;

    public int DeviceCount => devices.Count;

    public int GroupCount => groups.Count;

    /// <summary>Blocks that demands that stand use, with their marks.</summary>
    public IReadOnlyDictionary<int, int> Touched => touched;

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
    public int DeviceOf(int demand, int choice) => Local(devices, problem.Demands[demand].Candidates[choice].Device);

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
            if (Array.Exists(candidate.Claims, taken.Contains) || IsFedByAnother(demand, candidate) || MeetsStanding(demand, candidate))
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

    /// <summary>The device that feeds the receive blocks a feed needs by its place alone; -1 for lines and freely routed outputs.</summary>
    private int Sender(Demand demand, Candidate candidate) =>
        demand.Node.Line is null
        && candidate.Deliveries.Length == 1
        && candidate.Deliveries[0] is { IsLocal: false } delivery
        && problem.FixedBlockOf(delivery.Sink) >= 0
            ? delivery.Sender
            : -1;

    private bool IsFedByAnother(Demand demand, Candidate candidate)
    {
        var sender = Sender(demand, candidate);
        for (var position = 0; sender >= 0 && position < demand.Node.Width; position++)
        {
            if (senderOf.TryGetValue(problem.FixedBlockOf(candidate.Deliveries[0].Sink + position), out var other) && other != sender)
            {
                return true;
            }
        }

        return false;
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

    private void NoteSender(Demand demand, Candidate candidate)
    {
        for (var position = 0; Sender(demand, candidate) >= 0 && position < demand.Node.Width; position++)
        {
            senderOf[problem.FixedBlockOf(candidate.Deliveries[0].Sink + position)] = candidate.Deliveries[0].Sender;
        }
    }

    private OrderOption Option(int at, int choice)
    {
        var index = Demands[at];
        var demand = problem.Demands[index];
        var candidate = demand.Candidates[choice];
        var (blocks, marks, added) = Use(demand, candidate, candidate.Deliveries);
        return new OrderOption
        {
            Choice = choice,
            Device = Local(devices, candidate.Device),
            Group = Local(groups, candidate.PortGroup),
            Number = candidate.Number,
            Width = demand.Node.Width,
            Cost = Cost(index, candidate, includeLater: true),
            Blocks = blocks,
            Marks = marks,
            Pools = added,
            Sender = Sender(demand, candidate),
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

    /// <summary>The deliveries that a demand makes however it stands where it does: a line that is plugged at several points may take another of them.</summary>
    private Delivery[] Sure(Demand demand, Candidate standing)
    {
        var others = part.Choices[demand.Index]
            .Select(choice => demand.Candidates[choice])
            .Where(other => other.First == standing.First && other.Failed == standing.Failed)
            .ToArray();
        return Array.FindAll(standing.Deliveries, delivery => Array.TrueForAll(others, other => other.Deliveries.Contains(delivery)));
    }

    private (int[] Blocks, int[] Marks, (int Pool, int Amount)[] Pools) Use(Demand demand, Candidate candidate, Delivery[] deliveries)
    {
        var blocks = new SortedDictionary<int, int>();
        var added = new List<(int Pool, int Amount)>();
        var seen = new HashSet<(int Source, int Receiver)>();
        foreach (var delivery in deliveries)
        {
            // Two sinks of one device share a slot.
            if (!floor.IsCounted(delivery) || (demand.Node.Line is not null && !seen.Add((delivery.Source, delivery.Receiver))))
            {
                continue;
            }

            for (var position = 0; position < delivery.Width; position++)
            {
                var isUnique = demand.Node.Line is not null || floor.IsUnique(delivery.Source + position);
                if (demand.Node.Line is not null && IsSplit(candidate, delivery))
                {
                    // It travels in a block of another device than the one it is numbered on.
                    IsPlain = false;
                }
                else if (demand.Node.Line is not null)
                {
                    UseLine(delivery with { Source = delivery.Source + position }, blocks, added);
                }
                else if (problem.FixedBlockOf(delivery.Sink + position) is var block and >= 0)
                {
                    var share = floor.IsFull(block, delivery.Sender) ? floor.ShareOf(delivery.Source + position) : 0;
                    IsPlain &= share == WiringFloor.WholeBlock;
                    blocks[block] = Math.Max(blocks.GetValueOrDefault(block), mayShare ? share : WiringFloor.WholeBlock);
                }
                else if (isUnique)
                {
                    Add(added, Pool(delivery.Receiver, delivery.Sender, ObjectiveLevel.ReceiveBlocks, floor.ReceiveWidth(delivery.Receiver), candidate.Device));
                }
            }
        }

        return ([.. blocks.Keys], [.. blocks.Values], [.. added]);
    }

    /// <summary>True when a line is delivered from another of its points than the first.</summary>
    private bool IsSplit(Candidate candidate, Delivery delivery) =>
        delivery.Source != candidate.First && problem.Show.Graph.FixedSource(new PointIndex(delivery.Source)) != new PointIndex(candidate.First);

    private void UseLine(Delivery delivery, SortedDictionary<int, int> blocks, List<(int Pool, int Amount)> added)
    {
        var receiver = Local(receivers, delivery.Receiver);
        if (floor.TiedBlock(delivery) is var block and >= 0)
        {
            blocks[block] = blocks.GetValueOrDefault(block) | (receiver < 30 ? 1 << receiver : 0);
            return;
        }

        Add(added, Pool(delivery.Receiver, delivery.Sender, ObjectiveLevel.ReceiveBlocks, floor.ReceiveWidth(delivery.Receiver), delivery.Sender));
        if (receiver == 0)
        {
            // The first receiver stands for all, so that a source counts once whoever takes it.
            Add(added, Pool(-1, delivery.Sender, ObjectiveLevel.TransmitBlocks, floor.TransmitWidth(delivery.Sender), delivery.Sender));
        }
    }

    private int Pool(int receiver, int sender, ObjectiveLevel level, int width, int device)
    {
        if (!poolOf.TryGetValue((receiver, sender, level), out var pool))
        {
            pool = pools.Count;
            poolOf.Add((receiver, sender, level), pool);
            pools.Add(new OrderPool(level, width, Local(devices, device)));
        }

        return pool;
    }

    private static void Add(List<(int Pool, int Amount)> added, int pool)
    {
        var at = added.FindIndex(entry => entry.Pool == pool);
        if (at < 0)
        {
            added.Add((pool, 1));
        }
        else
        {
            added[at] = (pool, added[at].Amount + 1);
        }
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

            var sure = Sure(demand, candidate);
            IsPlain &= sure.Length == candidate.Deliveries.Length;
            var (blocks, marks, added) = Use(demand, candidate, mayShare ? sure : candidate.Deliveries);
            for (var i = 0; i < blocks.Length; i++)
            {
                Touch(blocks[i], marks[i], demand.Node.Line is not null);
            }

            foreach (var (pool, amount) in added)
            {
                poolStart.AddRange(new int[Math.Max(0, pools.Count - poolStart.Count)]);
                Start[ObjectiveNumbers.Levels + (int)pools[pool].Level] += pools[pool].Cost(poolStart[pool], amount);
                poolStart[pool] += amount;
            }
        }

        return [.. poolStart, .. new int[pools.Count - poolStart.Count]];
    }

    private void Touch(int block, int mark, bool isLine)
    {
        var key = isLine ? ~block : block;
        var isKnown = touched.TryGetValue(key, out var known);
        touched[key] = Join(isLine, known, mark);
        AddBlock(Start, isLine, isKnown, known, mark);
    }

    /// <summary>Joins what is known of a block with one more use of it: receivers of lines, or the greatest share that a source asks for.</summary>
    public static int Join(bool isLine, int known, int mark) => isLine ? known | mark : Math.Max(known, mark);

    /// <summary>Adds what one more use of a block costs; transmit blocks in parts of <see cref="WiringFloor.WholeBlock"/>.</summary>
    public static void AddBlock(int[] cost, bool isLine, bool isKnown, int known, int mark)
    {
        if (isLine)
        {
            cost[ObjectiveNumbers.TransmitBlocks] += isKnown ? 0 : WiringFloor.WholeBlock;
            cost[ObjectiveNumbers.ReceiveBlocks] += System.Numerics.BitOperations.PopCount((uint)(mark & ~known));
        }
        else
        {
            cost[ObjectiveNumbers.ReceiveBlocks] += isKnown ? 0 : 1;
            cost[ObjectiveNumbers.TransmitBlocks] += Math.Max(0, mark - known);
        }
    }

    private static int Local(List<int> table, int item)
    {
        var at = table.IndexOf(item);
        if (at < 0)
        {
            at = table.Count;
            table.Add(item);
        }

        return at;
    }
}
