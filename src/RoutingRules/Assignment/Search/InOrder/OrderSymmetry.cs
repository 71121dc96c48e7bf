namespace RoutingRules.Assignment.Search.InOrder;

/// <summary>Makes states equal that differ only in which of several equal devices is which.</summary>
internal sealed class OrderSymmetry
{
    private readonly OrderProblem list;
    private readonly CellLayout at;
    private readonly int[] classOf;
    private int[] groupOfDevice = [];
    private int[] blockBase = [];
    private int[][] poolsOfDevice = [];

    /// <param name="list">The problem.</param>
    /// <param name="at">Where its cells stand.</param>
    public OrderSymmetry(OrderProblem list, CellLayout at)
    {
        this.list = list;
        this.at = at;
        classOf = Classes();
    }

    /// <summary>Devices that every demand sees alike have one class; -1 for a device with several port groups or none of its kind.</summary>
    private int[] Classes()
    {
        var profiles = new List<int>[list.DeviceCount];
        var groupOf = new int[list.DeviceCount];
        Array.Fill(groupOf, -1);
        for (var device = 0; device < profiles.Length; device++)
        {
            profiles[device] = [];
        }

        var firstBlock = new Dictionary<int, int>();
        foreach (var (demand, options) in list.Options.Index())
        {
            foreach (var option in options)
            {
                var into = profiles[option.Device];
                groupOf[option.Device] = groupOf[option.Device] is -1 || groupOf[option.Device] == option.Group ? option.Group : -2;
                into.AddRange([
                    demand,
                    option.Number,
                    option.Width,
                    option.Sender,
                    option.AsksForSpares ? 1 : 0,
                    option.Spares,
                    option.Blocks.Length,
                    option.Pools.Length,
                ]);
                into.AddRange(option.Cost);
                into.AddRange(option.Marks);
                foreach (var block in option.Blocks)
                {
                    firstBlock.TryAdd(option.Device, block);
                    into.Add(block - firstBlock[option.Device]);
                    into.Add(list.Touched.TryGetValue(block, out var mark) ? mark + 1 : 0);
                    into.Add(list.Touched.TryGetValue(~block, out mark) ? mark + 1 : 0);
                }

                foreach (var (pool, amount) in option.Pools)
                {
                    into.AddRange([
                        (int)list.Pools[pool].Level,
                        list.Pools[pool].Width,
                        amount,
                        list.PoolStart[pool],
                        list.Pools[pool].Device == option.Device ? 0 : pool + 1,
                    ]);
                }
            }
        }

        poolsOfDevice =
        [
            .. Enumerable
                .Range(0, list.DeviceCount)
                .Select(device => Enumerable.Range(0, list.Pools.Length).Where(pool => list.Pools[pool].Device == device).ToArray()),
        ];
        var classes = new int[list.DeviceCount];
        Array.Fill(classes, -1);
        for (var device = 0; device < classes.Length; device++)
        {
            for (var other = 0; other < device && classes[device] < 0; other++)
            {
                if (
                    groupOf[device] >= 0
                    && groupOf[other] >= 0
                    && profiles[device].SequenceEqual(profiles[other])
                    && HaveEqualPools(device, other)
                    && list.HangAlike(device, other)
                )
                {
                    classes[device] = classes[other] = other;
                }
            }
        }

        groupOfDevice = groupOf;
        blockBase = [.. Enumerable.Range(0, list.DeviceCount).Select(device => firstBlock.GetValueOrDefault(device))];
        return classes;
    }

    /// <summary>True when the pools of two devices are alike; those that only standing demands use are in no option.</summary>
    private bool HaveEqualPools(int device, int other) =>
        poolsOfDevice[device]
            .Select(pool => (list.Pools[pool].Level, list.Pools[pool].Width))
            .SequenceEqual(poolsOfDevice[other].Select(pool => (list.Pools[pool].Level, list.Pools[pool].Width)));

    /// <summary>The cells with equal devices sorted, so that states that differ only in which of them is which are one.</summary>
    public int[] Canonical(int[] cells)
    {
        for (var i = at.Memory; i < cells.Length; i++)
        {
            if (cells[i] != 0)
            {
                return cells;
            }
        }

        int[]? sorted = null;
        for (var device = 0; device < classOf.Length; device++)
        {
            if (classOf[device] != device)
            {
                continue;
            }

            sorted ??= (int[])cells.Clone();
            var members = new List<int[]>();
            for (var other = device; other < classOf.Length; other++)
            {
                if (classOf[other] == device)
                {
                    members.Add(Row(cells, other));
                }
            }

            members.Sort(OrderState.Compare);
            var next = 0;
            for (var other = device; other < classOf.Length; other++)
            {
                if (classOf[other] == device)
                {
                    SetRow(sorted, other, members[next++]);
                }
            }
        }

        return sorted ?? cells;
    }

    private int[] Row(int[] cells, int device)
    {
        var group = groupOfDevice[device];
        var pools = poolsOfDevice[device];
        var row = new int[4 + pools.Length];
        row[3] = cells[at.Senders + group];
        row[0] = cells[group];
        row[1] = cells[at.Blocks + group] < 0 ? -1 : cells[at.Blocks + group] - (blockBase[device] << 8);
        row[2] = cells[at.Used + group];
        for (var i = 0; i < pools.Length; i++)
        {
            row[4 + i] = cells[at.Pools + pools[i]];
        }

        return row;
    }

    private void SetRow(int[] cells, int device, int[] row)
    {
        var group = groupOfDevice[device];
        (cells[group], cells[at.Blocks + group], cells[at.Used + group], cells[at.Senders + group]) = (row[0], row[1], row[2], row[3]);
        for (var i = 0; i < poolsOfDevice[device].Length; i++)
        {
            cells[at.Pools + poolsOfDevice[device][i]] = row[4 + i];
        }
    }
}
