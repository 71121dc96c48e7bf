using RoutingRules.Assignment.Problem;
using RoutingRules.Assignment.Wiring;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>
/// Places demands one after the other in list order, never before an earlier one of the same port group, keeping the best of all states that later
/// demands cannot tell apart.
/// </summary>
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
    private readonly OrderSymmetry symmetry;
    private readonly OrderCells cells;
    private readonly CellLayout layout;
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

        cells = new OrderCells(problem, list);
        layout = cells.Layout;
        symmetry = new OrderSymmetry(list, layout);
        freeIn = [.. Enumerable.Range(0, list.GroupCount).Select(list.FreeIn)];
    }

    /// <summary>True when no state had to be dropped, so that the result is the best of its kind.</summary>
    public bool IsComplete { get; private set; } = true;

    /// <summary>Work done, in units of the evaluator's work.</summary>
    public long Work => (steps * StepWork) / StepsPerUnit;

    /// <summary>What one option costs: a state is copied for each.</summary>
    public int StepWork => 16 + cells.Count;

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
        var cost = new int[ObjectiveVector.Length];
        for (var i = 0; i < cost.Length; i++)
        {
            cost[position[i]] = list.Start[i];
        }

        return new OrderState(cells.Begin(), cost, null, null);
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

        var into = (int[])state.Cells.Clone();
        cells.Forget(into, at, null);
        return new OrderState(into, cost, state, null);
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

        var into = (int[])state.Cells.Clone();
        into[option.Group] = option.Number + option.Width - 1;
        into[layout.Senders + option.Group] = option.Sender + 1;
        into[layout.Used + option.Group] += isSpareAsked ? option.Spares : 0;
        UseBlocks(into, demand.Node.Line is not null, option, added);
        foreach (var (pool, amount) in option.Pools)
        {
            added[ObjectiveNumbers.Levels + (int)list.Pools[pool].Level] += list.Pools[pool].Cost(into[layout.Pools + pool], amount);
            into[layout.Pools + pool] += amount;
        }

        if (cells.GroupSlot[at] >= 0 && !cells.HasDevice(into, cells.GroupSlot[at], option.Device))
        {
            added[ObjectiveNumbers.Groups] += cells.IsEmpty(into, cells.GroupSlot[at]) ? 0 : 1;
            cells.AddDevice(into, cells.GroupSlot[at], option.Device);
        }

        if (cells.MemoryOf[at] >= 0)
        {
            into[layout.Memory + cells.MemoryOf[at]] = (option.Device << 16) | option.Number;
        }

        cells.Forget(into, at, option);
        var cost = (int[])state.Cost.Clone();
        for (var i = 0; i < added.Length; i++)
        {
            cost[position[i]] += added[i];
        }

        return new OrderState(into, cost, state, option);
    }

    private void UseBlocks(int[] into, bool isLine, OrderOption option, int[] added)
    {
        for (var i = 0; i < option.Blocks.Length; i++)
        {
            var block = option.Blocks[i];
            var isKnown = list.Touched.TryGetValue(isLine ? ~block : block, out var known);
            ref var current = ref into[layout.Blocks + option.Group];
            var isCurrent = current >= 0 && current >> 8 == block;
            known = OrderUses.Join(isLine, known, isCurrent ? current & 0xff : 0);
            var mark = option.Marks[i] & 0xff;
            OrderUses.AddBlock(added, isLine, isKnown || isCurrent, known, mark);
            current = (block << 8) | (OrderUses.Join(isLine, known, mark) & 0xff);
        }
    }

    /// <summary>True when the block in use is fed by another device than the option needs.</summary>
    private bool IsFedByAnother(int[] into, OrderOption option)
    {
        foreach (var block in option.Blocks)
        {
            if (
                option.Sender >= 0
                && into[layout.Blocks + option.Group] >= 0
                && into[layout.Blocks + option.Group] >> 8 == block
                && into[layout.Senders + option.Group] is > 0 and var sender
                && sender != option.Sender + 1
            )
            {
                return true;
            }
        }

        return false;
    }

    private bool KeepsApart(int[] into, Demand demand, OrderOption option, int[] added)
    {
        for (var at = 0; at < cells.MemoryOf.Length && (demand.Set >= 0 || demand.Separations.Count > 0); at++)
        {
            if (cells.MemoryOf[at] < 0 || into[layout.Memory + cells.MemoryOf[at]] is not (> 0 and var place))
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
}
