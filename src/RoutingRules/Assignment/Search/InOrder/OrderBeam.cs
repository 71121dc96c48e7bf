using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Places demands one after the other in list order, never before an earlier one of the same port group, keeping the best of all states that later demands cannot tell apart.</summary>
/// <remarks>
/// A dynamic programme: it ends with the best placement that opposes the list order nowhere, as far as the floor of the wiring can tell, unless it
/// had to drop states. Of the places in a block, a later one is tried only where a demand of a set may want its number or where by itself it costs
/// less than the earlier ones, as beside a pin whose place in the list is passed: else it gains nothing.
/// </remarks>
internal sealed class OrderBeam
{
    private readonly AssignmentProblem problem;
    private readonly OrderProblem list;
    private readonly int[] position;
    private readonly int[] levelAt;
    private readonly int[] lastUse;
    private readonly int[] lastPoolUse;
    private readonly int[] memoryOf;
    private readonly int[] lastMemoryUse;
    private readonly int[] groupSlot;
    private readonly int[] lastGroupUse;
    private readonly OrderSymmetry symmetry;
    private readonly CellLayout layout;
    private readonly int groupsAt;
    private readonly List<(int First, int Count, int Value)>?[] forgotten;
    private readonly int deviceWords;
    private readonly int cellCount;
    private readonly int[] freeIn;
    private long steps;

    /// <summary>Cells copied, and as many again for what comes with it, for one unit of the evaluator's work.</summary>
    public const int StepsPerUnit = 64;

    public OrderBeam(AssignmentProblem problem, OrderProblem list, ObjectiveLevel[] order)
    {
        this.problem = problem;
        this.list = list;
        position = new int[ObjectiveVector.Length];
        levelAt = new int[ObjectiveVector.Length];
        for (var i = 0; i < ObjectiveVector.Length; i++)
        {
            levelAt[i] = LevelOrder.At(order, i);
            position[levelAt[i]] = i;
        }

        layout = new CellLayout(list.GroupCount, 2 * list.GroupCount, 3 * list.GroupCount, 4 * list.GroupCount, (4 * list.GroupCount) + list.Pools.Length);
        lastUse = new int[list.GroupCount];
        lastPoolUse = new int[list.Pools.Length];
        Array.Fill(lastUse, -1);
        Array.Fill(lastPoolUse, -1);
        foreach (var (at, options) in list.Options.Index())
        {
            foreach (var option in options)
            {
                lastUse[option.Group] = at;
                foreach (var (pool, _) in option.Pools)
                {
                    lastPoolUse[pool] = at;
                }
            }
        }

        var index = new Dictionary<int, int>();
        foreach (var (at, demand) in list.Demands.Index())
        {
            index.Add(demand, at);
        }

        memoryOf = Array.ConvertAll(list.Demands, _ => -1);
        lastMemoryUse = new int[list.Demands.Length];
        var memories = Remember(index);
        groupsAt = layout.Memory + memories;
        groupSlot = Array.ConvertAll(list.Demands, _ => -1);
        lastGroupUse = new int[list.Demands.Length];
        var groupIds = new Dictionary<int, int>();
        for (var at = 0; at < list.Demands.Length; at++)
        {
            if (problem.Demands[list.Demands[at]].Group is >= 0 and var group)
            {
                groupSlot[at] = groupIds.TryGetValue(group, out var slot) ? slot : groupIds[group] = groupIds.Count;
                lastGroupUse[groupSlot[at]] = at;
            }
        }

        deviceWords = (list.DeviceCount + 30) / 31;
        cellCount = groupsAt + (deviceWords * groupIds.Count);
        forgotten = Forgotten(groupIds.Count);
        symmetry = new OrderSymmetry(list, layout);
        freeIn = [.. Enumerable.Range(0, list.GroupCount).Select(list.FreeIn)];
    }

    /// <summary>True when no state had to be dropped, so that the result is the best of its kind.</summary>
    public bool IsComplete { get; private set; } = true;

    /// <summary>Work done, in units of the evaluator's work.</summary>
    public long Work => (steps * StepWork) / StepsPerUnit;

    /// <summary>What one option costs: a state is copied for each.</summary>
    public int StepWork => 16 + cellCount;

    /// <summary>Runs.</summary>
    /// <param name="width">States to keep after each demand at most.</param>
    /// <param name="cancellation">Stops it; it then returns null.</param>
    public OrderState? Run(int width, CancellationToken cancellation)
    {
        var layer = new List<OrderState> { Begin() };
        for (var at = 0; at < list.Demands.Length; at++)
        {
            if (cancellation.IsCancellationRequested)
            {
                return null;
            }

            if (list.Standing[at] >= 0)
            {
                continue;
            }

            layer = Next(layer, at, width);
        }

        return layer.Aggregate((best, state) => OrderState.Compare(state.Cost, best.Cost) < 0 ? state : best);
    }

    private OrderState Begin()
    {
        var cells = new int[cellCount];
        for (var group = 0; group < list.GroupCount; group++)
        {
            cells[layout.Blocks + group] = -1;
        }

        for (var pool = 0; pool < list.Pools.Length; pool++)
        {
            cells[layout.Pools + pool] = lastPoolUse[pool] < 0 ? 0 : Reduced(pool, list.PoolStart[pool]);
        }

        for (var at = 0; at < list.Demands.Length; at++)
        {
            if (list.Standing[at] >= 0 && groupSlot[at] >= 0)
            {
                AddDevice(cells, groupSlot[at], list.DeviceOf(list.Demands[at], list.Standing[at]));
            }
        }

        var cost = new int[ObjectiveVector.Length];
        for (var i = 0; i < cost.Length; i++)
        {
            cost[position[i]] = list.Start[i];
        }

        return new OrderState(cells, cost, null, null);
    }

    private List<OrderState> Next(List<OrderState> layer, int at, int width)
    {
        var next = new List<OrderState>();
        var known = new Dictionary<int[], int>(CellComparer.Instance);
        foreach (var state in layer)
        {
            var isPlaced = false;
            var (group, block, number) = (-1, -2, 0);
            int[]? least = null;
            foreach (var option in list.Options[at])
            {
                if (option.Number <= state.Cells[option.Group])
                {
                    continue;
                }

                var here = option.Blocks.Length > 0 ? option.Blocks[0] : -1;
                var isSameBlock = option.Group == group && here == block;
                if (isSameBlock && option.Number > number && !IsCheaper(option.Cost, least!) && problem.Demands[list.Demands[at]].Set < 0)
                {
                    continue;
                }

                steps++;
                if (Place(state, at, option) is { } placed)
                {
                    least = isSameBlock && !IsCheaper(option.Cost, least!) ? least : option.Cost;
                    (group, block, number) = (option.Group, here, option.Number);
                    isPlaced = true;
                    Keep(next, known, placed);
                }
            }

            if (!isPlaced)
            {
                Keep(next, known, LeaveOut(state, at));
            }
        }

        if (next.Count > width)
        {
            IsComplete = false;
            next =
            [
                .. next.Index()
                    .OrderBy(entry => entry.Item.Cost, Comparer<int[]>.Create(OrderState.Compare))
                    .ThenBy(entry => entry.Index)
                    .Take(width)
                    .OrderBy(entry => entry.Index)
                    .Select(entry => entry.Item),
            ];
        }

        return next;
    }

    /// <summary>True when what a place costs by itself is less than what another does, in the order asked for.</summary>
    private bool IsCheaper(int[] cost, int[] than)
    {
        foreach (var at in levelAt)
        {
            if (cost[at] != than[at])
            {
                return cost[at] < than[at];
            }
        }

        return false;
    }

    private void Keep(List<OrderState> next, Dictionary<int[], int> known, OrderState state)
    {
        var key = symmetry.Canonical(state.Cells);
        if (!known.TryGetValue(key, out var at))
        {
            known.Add(key, next.Count);
            next.Add(state);
        }
        else if (OrderState.Compare(state.Cost, next[at].Cost) < 0)
        {
            next[at] = state;
        }
    }

    private OrderState LeaveOut(OrderState state, int at)
    {
        var demand = problem.Demands[list.Demands[at]];
        var cost = (int[])state.Cost.Clone();
        cost[position[demand.Tier]] += demand.Weight;
        if (demand.Existing >= 0)
        {
            cost[position[ObjectiveNumbers.Moved(demand.Node.IsHeld)]]++;
        }

        var cells = (int[])state.Cells.Clone();
        Forget(cells, at, null);
        return new OrderState(cells, cost, state, null);
    }

    private OrderState? Place(OrderState state, int at, OrderOption option)
    {
        var demand = problem.Demands[list.Demands[at]];
        var added = (int[])option.Cost.Clone();
        if (!KeepsApart(state.Cells, demand, option, added) || IsFedByAnother(state.Cells, option))
        {
            return null;
        }

        var isSpareAsked = problem.Options.Spares > 0 && demand.Node.Line is null;
        if (isSpareAsked && option.AsksForSpares && freeIn[option.Group] - state.Cells[layout.Used + option.Group] - option.Spares < problem.Options.Spares)
        {
            return null;
        }

        var cells = (int[])state.Cells.Clone();
        cells[option.Group] = option.Number + option.Width - 1;
        cells[layout.Senders + option.Group] = option.Sender + 1;
        cells[layout.Used + option.Group] += isSpareAsked ? option.Spares : 0;
        UseBlocks(cells, demand.Node.Line is not null, option, added);
        foreach (var (pool, amount) in option.Pools)
        {
            added[ObjectiveNumbers.Levels + (int)list.Pools[pool].Level] += list.Pools[pool].Cost(cells[layout.Pools + pool], amount);
            cells[layout.Pools + pool] += amount;
        }

        if (groupSlot[at] >= 0 && !HasDevice(cells, groupSlot[at], option.Device))
        {
            added[ObjectiveNumbers.Groups] += IsEmpty(cells, groupSlot[at]) ? 0 : 1;
            AddDevice(cells, groupSlot[at], option.Device);
        }

        if (memoryOf[at] >= 0)
        {
            cells[layout.Memory + memoryOf[at]] = (option.Device << 16) | option.Number;
        }

        Forget(cells, at, option);
        var cost = (int[])state.Cost.Clone();
        for (var i = 0; i < added.Length; i++)
        {
            cost[position[i]] += added[i];
        }

        return new OrderState(cells, cost, state, option);
    }

    private void UseBlocks(int[] cells, bool isLine, OrderOption option, int[] added)
    {
        for (var i = 0; i < option.Blocks.Length; i++)
        {
            var block = option.Blocks[i];
            var isKnown = list.Touched.TryGetValue(isLine ? ~block : block, out var known);
            ref var current = ref cells[layout.Blocks + option.Group];
            var isCurrent = current >= 0 && current >> 8 == block;
            known = OrderProblem.Join(isLine, known, isCurrent ? current & 0xff : 0);
            var mark = option.Marks[i] & 0xff;
            OrderProblem.AddBlock(added, isLine, isKnown || isCurrent, known, mark);
            current = (block << 8) | (OrderProblem.Join(isLine, known, mark) & 0xff);
        }
    }

    /// <summary>True when the block in use is fed by another device than the option needs.</summary>
    private bool IsFedByAnother(int[] cells, OrderOption option)
    {
        foreach (var block in option.Blocks)
        {
            if (
                option.Sender >= 0
                && cells[layout.Blocks + option.Group] >= 0
                && cells[layout.Blocks + option.Group] >> 8 == block
                && cells[layout.Senders + option.Group] is > 0 and var sender
                && sender != option.Sender + 1
            )
            {
                return true;
            }
        }

        return false;
    }

    private bool KeepsApart(int[] cells, Demand demand, OrderOption option, int[] added)
    {
        for (var at = 0; at < memoryOf.Length && (demand.Set >= 0 || demand.Separations.Count > 0); at++)
        {
            if (memoryOf[at] < 0 || cells[layout.Memory + memoryOf[at]] is not (> 0 and var place))
            {
                continue;
            }

            var other = problem.Demands[list.Demands[at]];
            SetCost.Add(added, demand, option.Device, option.Number, other, place >> 16, place & 0xffff);
            if (demand.Separations.Exists(separate => separate.Other == other.Index && list.Meet(separate.By, place >> 16, option.Device)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Clears what no later demand can notice, so that states become equal.</summary>
    private void Forget(int[] cells, int at, OrderOption? option)
    {
        foreach (var (pool, _) in option?.Pools ?? [])
        {
            cells[layout.Pools + pool] = Reduced(pool, cells[layout.Pools + pool]);
        }

        foreach (var (first, count, value) in forgotten[at] ?? [])
        {
            cells.AsSpan(first, count).Fill(value);
        }
    }

    /// <summary>Only how full the last block is matters.</summary>
    private int Reduced(int pool, int sources) => sources > list.Pools[pool].Width ? ((sources - 1) % list.Pools[pool].Width) + 1 : sources;

    /// <summary>Lists for each demand that is placed which cells it is the last to need.</summary>
    private List<(int First, int Count, int Value)>?[] Forgotten(int groupCount)
    {
        var of = new List<(int First, int Count, int Value)>?[list.Demands.Length];
        for (var group = 0; group < lastUse.Length; group++)
        {
            Forget(lastUse[group], group, 1, 0);
            Forget(lastUse[group], layout.Blocks + group, 1, -1);
            Forget(lastUse[group], layout.Used + group, 1, 0);
            Forget(lastUse[group], layout.Senders + group, 1, 0);
        }

        for (var pool = 0; pool < lastPoolUse.Length; pool++)
        {
            Forget(lastPoolUse[pool], layout.Pools + pool, 1, 0);
        }

        for (var at = 0; at < memoryOf.Length; at++)
        {
            Forget(memoryOf[at] >= 0 ? lastMemoryUse[at] : -1, layout.Memory + memoryOf[at], 1, 0);
        }

        for (var group = 0; group < groupCount; group++)
        {
            Forget(lastGroupUse[group], groupsAt + (deviceWords * group), deviceWords, 0);
        }

        return of;

        void Forget(int last, int first, int count, int value)
        {
            while (last >= 0 && last < of.Length && list.Standing[last] >= 0)
            {
                last++;
            }

            if (last >= 0 && last < of.Length)
            {
                (of[last] ??= []).Add((first, count, value));
            }
        }
    }

    /// <summary>Gives a memory to each demand that a later one of its set, or one it must stay apart from, asks about.</summary>
    private int Remember(Dictionary<int, int> index)
    {
        var memories = 0;
        for (var at = 0; at < list.Demands.Length; at++)
        {
            var demand = problem.Demands[list.Demands[at]];
            var last = -1;
            for (var later = at + 1; demand.Set >= 0 && later < list.Demands.Length; later++)
            {
                var other = problem.Demands[list.Demands[later]];
                last = other.Set == demand.Set && other.Part != demand.Part && other.Node.Entry == demand.Node.Entry ? later : last;
            }

            foreach (var separate in demand.Separations)
            {
                last = Math.Max(last, index.TryGetValue(separate.Other, out var other) ? other : -1);
            }

            if (last > at && list.Standing[at] < 0)
            {
                memoryOf[at] = memories++;
                lastMemoryUse[at] = last;
            }
        }

        return memories;
    }

    private void AddDevice(int[] cells, int slot, int device) => cells[groupsAt + (deviceWords * slot) + (device / 31)] |= 1 << (device % 31);

    private bool HasDevice(int[] cells, int slot, int device) => (cells[groupsAt + (deviceWords * slot) + (device / 31)] & (1 << (device % 31))) != 0;

    private bool IsEmpty(int[] cells, int slot) => !cells.AsSpan(groupsAt + (deviceWords * slot), deviceWords).ContainsAnyExcept(0);
}
