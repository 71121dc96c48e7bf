using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>
/// What a state of <see cref="OrderBeam"/> keeps, cell by cell, and which demand is the last to need each: cells that nobody needs any more are cleared,
/// so that states become equal.
/// </summary>
internal sealed class OrderCells
{
    private readonly AssignmentProblem problem;
    private readonly OrderProblem list;
    private readonly int[] lastUse;
    private readonly int[] lastPoolUse;
    private readonly int[] lastMemoryUse;
    private readonly int[] lastGroupUse;
    private readonly int groupsAt;
    private readonly int deviceWords;
    private readonly List<(int First, int Count, int Value)>?[] forgotten;

    public OrderCells(AssignmentProblem problem, OrderProblem list)
    {
        this.problem = problem;
        this.list = list;
        Layout = new CellLayout(list.GroupCount, 2 * list.GroupCount, 3 * list.GroupCount, 4 * list.GroupCount, (4 * list.GroupCount) + list.Pools.Length);
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

        MemoryOf = Array.ConvertAll(list.Demands, _ => -1);
        lastMemoryUse = new int[list.Demands.Length];
        var memories = Remember(index);
        groupsAt = Layout.Memory + memories;
        GroupSlot = Array.ConvertAll(list.Demands, _ => -1);
        lastGroupUse = new int[list.Demands.Length];
        var groupIds = new Dictionary<int, int>();
        for (var at = 0; at < list.Demands.Length; at++)
        {
            if (problem.Demands[list.Demands[at]].Group is >= 0 and var group)
            {
                GroupSlot[at] = groupIds.TryGetValue(group, out var slot) ? slot : groupIds[group] = groupIds.Count;
                lastGroupUse[GroupSlot[at]] = at;
            }
        }

        deviceWords = (list.DeviceCount + 30) / 31;
        Count = groupsAt + (deviceWords * groupIds.Count);
        forgotten = Forgotten(groupIds.Count);
    }

    public CellLayout Layout { get; }

    /// <summary>How many cells a state has.</summary>
    public int Count { get; }

    /// <summary>For each demand which memory keeps its place; -1 for none.</summary>
    public int[] MemoryOf { get; }

    /// <summary>For each demand the position of its group; -1 for none.</summary>
    public int[] GroupSlot { get; }

    /// <summary>The cells while only what stands is placed.</summary>
    public int[] Begin()
    {
        var cells = new int[Count];
        for (var group = 0; group < list.GroupCount; group++)
        {
            cells[Layout.Blocks + group] = -1;
        }

        for (var pool = 0; pool < list.Pools.Length; pool++)
        {
            cells[Layout.Pools + pool] = lastPoolUse[pool] < 0 ? 0 : Reduced(pool, list.PoolStart[pool]);
        }

        for (var at = 0; at < list.Demands.Length; at++)
        {
            if (list.Standing[at] >= 0 && GroupSlot[at] >= 0)
            {
                AddDevice(cells, GroupSlot[at], list.DeviceOf(list.Demands[at], list.Standing[at]));
            }
        }

        return cells;
    }

    /// <summary>Clears what no later demand can notice, so that states become equal.</summary>
    public void Forget(int[] cells, int at, OrderOption? option)
    {
        foreach (var (pool, _) in option?.Pools ?? [])
        {
            cells[Layout.Pools + pool] = Reduced(pool, cells[Layout.Pools + pool]);
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
            Forget(lastUse[group], Layout.Blocks + group, 1, -1);
            Forget(lastUse[group], Layout.Used + group, 1, 0);
            Forget(lastUse[group], Layout.Senders + group, 1, 0);
        }

        for (var pool = 0; pool < lastPoolUse.Length; pool++)
        {
            Forget(lastPoolUse[pool], Layout.Pools + pool, 1, 0);
        }

        for (var at = 0; at < MemoryOf.Length; at++)
        {
            Forget(MemoryOf[at] >= 0 ? lastMemoryUse[at] : -1, Layout.Memory + MemoryOf[at], 1, 0);
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
                MemoryOf[at] = memories++;
                lastMemoryUse[at] = last;
            }
        }

        return memories;
    }

    public void AddDevice(int[] cells, int slot, int device) => cells[groupsAt + (deviceWords * slot) + (device / 31)] |= 1 << (device % 31);

    public bool HasDevice(int[] cells, int slot, int device) => (cells[groupsAt + (deviceWords * slot) + (device / 31)] & (1 << (device % 31))) != 0;

    public bool IsEmpty(int[] cells, int slot) => !cells.AsSpan(groupsAt + (deviceWords * slot), deviceWords).ContainsAnyExcept(0);
}
