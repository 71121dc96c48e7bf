using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>Finds the cheapest wiring for a set of deliveries, or that there is none.</summary>
/// <remarks>
/// Tasks that cannot influence each other are solved one after the other; inside such a part a depth-first search tries cheap options first
/// and stops at its budget with the best wiring found. Not thread safe.
/// </remarks>
internal sealed partial class WiringSolver
{
    private readonly AssignmentProblem problem;
    private readonly WiringState state;
    private readonly int[] placed;
    private readonly List<int> placedPoints = [];
    private readonly TransmitBlock[][] blocksOf;
    private readonly ReceiveBlock[][] receiveBlocksOf;
    private readonly ObjectiveLevel[] order;
    private readonly bool[] isRelevant;
    private readonly bool[] isTasked;
    private readonly bool[] isParticular;
    private readonly bool[] hasKept;

    /// <summary>For each sender the slots in a row among which no receiver of a free need can tell two alike ones apart.</summary>
    private readonly int[] runWidth;

    /// <summary>Receive blocks with a slot that feeds an output by fixed routing, is exposed, or is dead or reserved, and the devices that have one.</summary>
    private readonly bool[] feedsOutputs;
    private readonly bool[] hasFedOutputs;
    private readonly bool[] soundsByItself;
    private readonly HashSet<int> keptSources = [];

    /// <summary>Transmit slots from which sinks of demands that stay are fed in the input.</summary>
    private readonly HashSet<int> standing = [];
    private readonly int[] keptStreams;
    private readonly int[] freeBlocks;
    private readonly Dictionary<WiringKey, WiringSolution> solved = [];
    private readonly bool[] feedsBystanders;
    private readonly bool hasBystanders;

    /// <summary>True when a receive slot feeds outputs in blocks and others by fixed routing: then a part is no longer known by its tasks alone.</summary>
    private readonly bool mixesRouting;

    /// <summary>True when slots are filled before any task, so that a part is not known by its tasks alone.</summary>
    private bool fillsSinks;
    private bool[]? open;
    private Func<WiringPlan, bool>? accept;
    private long limit;
    private long grace;
    private bool ranOut;

    /// <summary>What the part in hand costs at least, with all before it; null until it is asked for.</summary>
    private WiringCost? cheapest;
    private WiringCost started;
    private long floorFrom;

    private WiringTask[] tasks = [];
    private WiringCost best;
    private bool hasBest;
    private Choice?[] current = [];
    private Choice?[] bestChoices = [];

    public WiringSolver(AssignmentProblem problem)
    {
        this.problem = problem;
        state = new WiringState(problem);
        placed = new int[problem.Show.Graph.PointCount];
        Array.Fill(placed, -1);
        isRelevant = new bool[problem.TransmitBlocks.Length];
        blocksOf = ByDevice(problem.TransmitBlocks, block => block.Device);
        receiveBlocksOf = ByDevice(problem.ReceiveBlocks, block => block.Device);
        feedsBystanders = Array.ConvertAll(blocksOf, blocks => Array.Exists(blocks, block => block.Bystanders.Count > 0));
        hasBystanders = Array.Exists(feedsBystanders, device => device);
        hasKept = new bool[problem.DeviceCount];
        runWidth = new int[problem.DeviceCount];
        isTasked = new bool[problem.ReceiveBlocks.Length];
        isParticular = Array.ConvertAll(problem.TransmitBlocks, IsParticular);
        feedsOutputs = Array.ConvertAll(problem.ReceiveBlocks, FeedsOutputs);
        hasFedOutputs = new bool[problem.DeviceCount];
        soundsByItself = new bool[problem.Show.Graph.PointCount];
        keptStreams = new int[problem.DeviceCount];
        freeBlocks = new int[problem.DeviceCount];
        foreach (var block in problem.ReceiveBlocks)
        {
            keptStreams[block.Device] += block.IsKept ? 1 : 0;
            freeBlocks[block.Device] += block.IsKept ? 0 : 1;
            hasFedOutputs[block.Device] |= feedsOutputs[block.Id];
        }

        mixesRouting = problem.FixedOutputsOf.Any(outputs => outputs.Length > 1 && outputs.Any(output => problem.BlockOf[output] is not null));
        order =
        [
            .. LevelOrder
                .Of(problem.Options)
                .Where(level => level is ObjectiveLevel.Rewritten or ObjectiveLevel.TransmitBlocks or ObjectiveLevel.ReceiveBlocks),
        ];
    }

    /// <summary>Options tried since the solver was made.</summary>
    public long Work { get; private set; }

    /// <summary>True when the last search ended for its budget: then what it did not find may exist, and what it found may not be the cheapest.</summary>
    public bool RanOut { get; private set; }

    /// <summary>Finds the cheapest wiring.</summary>
    /// <param name="demands">What has to arrive; deliveries inside one device may be among them and cost nothing.</param>
    /// <param name="mayFill">Outputs that demands still to be placed may take, so that they need not be silent yet; null for none.</param>
    /// <param name="budget">Options to try at most in each part; 0 for the first wiring.</param>
    /// <param name="accept">Says whether a wiring may be used at all; null when every one may. All deliveries are then wired as one part.</param>
    public WiringPlan? Solve(IReadOnlyList<WiringDemand> demands, bool[]? mayFill, long budget, Func<WiringPlan, bool>? accept = null)
    {
        this.accept = accept;
        var wiring = With(demands, mayFill, all => SolveParts(all, budget));
        this.accept = null;
        return wiring;
    }

    /// <summary>The cost of the cheapest wiring, without the wiring; null when there is none.</summary>
    /// <param name="demands">As for <see cref="Solve"/>.</param>
    /// <param name="mayFill">As for <see cref="Solve"/>.</param>
    /// <param name="budget">As for <see cref="Solve"/>.</param>
    /// <param name="isBest">True when no cheaper wiring exists, or surely none at all.</param>
    public WiringCost? Price(IReadOnlyList<WiringDemand> demands, bool[]? mayFill, long budget, out bool isBest)
    {
        var best = true;
        var cost = With(
            demands,
            mayFill,
            all =>
            {
                var total = state.Cost;
                foreach (var part in Parts(all))
                {
                    var solution = SolvePart(part, budget);
                    best &= solution.IsBest;
                    if (solution.Choices is null)
                    {
                        return (WiringCost?)null;
                    }

                    total += solution.Cost;
                }

                return total;
            }
        );
        isBest = best;
        return cost;
    }

    private TResult? With<TResult>(IReadOnlyList<WiringDemand> demands, bool[]? mayFill, Func<List<WiringTask>, TResult?> solve)
    {
        open = mayFill;
        RanOut = false;
        foreach (var demand in demands)
        {
            for (var position = 0; position < demand.Delivery.Width; position++)
            {
                placed[demand.Delivery.Sink + position] = demand.Delivery.Source + position;
                placedPoints.Add(demand.Delivery.Sink + position);
            }
        }

        var mark = state.Mark;
        var result = default(TResult);
        if (FillSinks(demands) && KeptComeAlongSilent() && new WiringTasks(problem, feedsBystanders).Build(demands) is { } all)
        {
            CountSettled(demands);
            FindRelevant(all);
            result = solve(all);
        }

        state.Undo(mark);
        foreach (var point in placedPoints)
        {
            placed[point] = -1;
        }

        placedPoints.Clear();
        return result;
    }

    /// <summary>Fills the transmit slots that lines name themselves; false when one cannot carry its line.</summary>
    private bool FillSinks(IReadOnlyList<WiringDemand> demands)
    {
        fillsSinks = false;
        foreach (var (delivery, _) in demands)
        {
            for (var position = 0; delivery.IsLocal && problem.TransmitBlockOf[delivery.Sink] >= 0 && position < delivery.Width; position++)
            {
                fillsSinks = true;
                if (!state.Fill(delivery.Sink + position, delivery.Source + position))
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Counts the sinks of demands that stay and that take their signal from another point, where that needs no choice of the wiring.</summary>
    private void CountSettled(IReadOnlyList<WiringDemand> demands)
    {
        foreach (var (delivery, isKept) in demands)
        {
            for (var position = 0; isKept && position < delivery.Width; position++)
            {
                var sink = delivery.Sink + position;
                var feeder = delivery.IsLocal ? delivery.Source + position : problem.ReceiveSlotOf(sink);
                if (feeder < 0 || feeder == sink)
                {
                    continue;
                }

                if (problem.TransmitBlockOf[sink] >= 0)
                {
                    state.CountSlot(sink);
                }
                else
                {
                    state.CountSinks(state.InputContent(sink) == feeder ? 0 : 1);
                }
            }
        }
    }

    /// <summary>False when a kept stream would sound at an idle output because a device routes it together with one that is taken.</summary>
    private bool KeptComeAlongSilent()
    {
        foreach (var block in problem.ReceiveBlocks)
        {
            for (var position = 0; block.IsKept && state.StartOf(block.Id) >= 0 && position < block.Width; position++)
            {
                foreach (var output in problem.FixedOutputsOf[block.First + position])
                {
                    if (
                        problem.BlockOf[output] is { } together
                        && Array.Exists(together, sink => placed[sink] >= 0)
                        && placed[output] < 0
                        && problem.MustBeSilent[output]
                        && !StaysAsIs(output, block.First + position)
                        && !(open?[output] ?? false)
                        && !state.Silence(state.StartOf(block.Id) + position, output)
                    )
                    {
                        return false;
                    }
                }
            }
        }

        return true;
    }

    private WiringPlan? SolveParts(List<WiringTask> all, long budget)
    {
        var isBest = true;
        var wired = new List<WiringTask>(all.Count);
        foreach (
            var part in accept is null
                ? Parts(all)
                :
                [
                    [.. all],
                ]
        )
        {
            var solution = SolvePart(part, budget);
            if (solution.Choices is null)
            {
                return null;
            }

            isBest &= solution.IsBest;
            var chosen = solution.IsApart ? Apart(part) : part;
            if (!ApplyAll(chosen, solution.Choices))
            {
                // Another part took a receive block of equal worth: choose again beside it.
                solution = SearchPart(part, budget);
                chosen = solution.IsApart ? Apart(part) : part;
                if (solution.Choices is null || !ApplyAll(chosen, solution.Choices))
                {
                    return null;
                }
            }

            wired.AddRange(chosen);

            if (hasBystanders)
            {
                state.AddBystanders(part);
            }
        }

        return Read(wired, isBest);
    }

    private WiringSolution SolvePart(WiringTask[] part, long budget)
    {
        var isCached = open is null && accept is null && !mixesRouting && !fillsSinks;
        var key = isCached ? new WiringKey(part, isTasked, receiveBlocksOf, feedsBystanders, problem.FixedOutputsOf, placed, budget) : default;
        if (isCached && solved.TryGetValue(key, out var known))
        {
            Work++;
            return known;
        }

        var solution = SearchPart(part, budget);
        if (isCached)
        {
            if (solved.Count >= MaxSolved)
            {
                solved.Clear();
            }

            solved.Add(key, solution);
        }

        return solution;
    }

    private WiringSolution SearchPart(WiringTask[] part, long budget)
    {
        tasks = part;
        current = new Choice?[part.Length];
        hasBest = false;
        ranOut = false;
        limit = Work + Math.Max(budget, 1);
        grace = problem.Links.Count == 0 ? GraceWork : Math.Clamp(budget * 10, LeastGraceWork, GraceWork);
        var before = state.Cost;
        (started, cheapest, floorFrom) = (before, null, Work + CheapWork);
        if (problem.Links.Count == 0 || MayCross(part))
        {
            Stand();
            Pack();
            Search(0, budget == 0);
        }

        var isApart = SearchCopies(part, budget);
        RanOut |= ranOut;
        return new WiringSolution
        {
            IsApart = isApart,
            Choices = hasBest ? Array.ConvertAll(bestChoices, choice => choice!) : null,
            Cost = hasBest ? best - before : default,
            IsBest = !ranOut && budget > 0,
        };
    }

    private bool ApplyAll(WiringTask[] part, Choice[] choices)
    {
        var mark = state.Mark;
        for (var i = 0; i < part.Length; i++)
        {
            var choice = choices[i];
            if (!Apply(part[i], choice))
            {
                state.Undo(mark);
                return false;
            }

            part[i].Served = choice.ReceiveSlots;
        }

        return true;
    }

    private void Search(int index, bool firstOnly)
    {
        if ((ranOut && hasBest) || IsHopeless())
        {
            return;
        }

        if (index == tasks.Length)
        {
            var before = state.Mark;
            Accept(current);
            state.Undo(before);

            ranOut |= firstOnly;
            return;
        }

        var mark = state.Mark;
        foreach (var choice in Options(tasks[index]))
        {
            if (hasBest && choice.Cost.CompareTo(best, order) >= 0)
            {
                break;
            }

            if (Work > limit)
            {
                ranOut = true;
                if (hasBest || Work > limit + grace)
                {
                    return;
                }
            }

            if (Apply(tasks[index], choice))
            {
                current[index] = choice;
                Search(index + 1, firstOnly);
            }

            state.Undo(mark);
        }
    }

    /// <summary>True when nothing better than the best can come of what is applied. In small searches it is not worth asking.</summary>
    private bool IsHopeless()
    {
        if (!hasBest || Work < floorFrom)
        {
            return false;
        }

        cheapest ??= started + PartFloor.Of(tasks, blocksOf, receiveBlocksOf);
        var now = state.Cost;
        var least = new WiringCost(now.Rewritten, Math.Max(now.Transmit, cheapest.Value.Transmit), Math.Max(now.Receive, cheapest.Value.Receive));
        return least.CompareTo(best, order) >= 0;
    }

    private bool IsAccepted()
    {
        for (var i = 0; accept is not null && i < tasks.Length; i++)
        {
            var choice = current[i]!;
            tasks[i].Served = choice.ReceiveSlots;
        }

        return accept is null || accept(Read([.. tasks], isBest: false));
    }

    private const int MaxSolved = 200_000;

    /// <summary>Options tried before a search asks what its part costs at least.</summary>
    private const long CheapWork = 100;

    /// <summary>Options tried beyond the budget when no wiring has been found yet.</summary>
    private const long GraceWork = 20_000;

    /// <summary>The same where links may fill up, so that there often is none.</summary>
    private const long LeastGraceWork = 1_000;

    private List<Choice> Options(WiringTask task)
    {
        var found = new List<Choice>();
        var mark = state.Mark;
        foreach (var choice in task.Block is null ? NeedOptions(task) : BlockOptions(task))
        {
            Work++;
            if (Apply(task, choice))
            {
                choice.Cost = state.Cost;
                found.Add(choice);
            }

            state.Undo(mark);
        }

        found.Sort(
            (x, y) =>
            {
                var compared = x.Cost.CompareTo(y.Cost, order);
                compared = compared != 0 ? compared : y.Familiar.CompareTo(x.Familiar);
                return compared != 0 ? compared : x.Rank.CompareTo(y.Rank);
            }
        );
        return found;
    }

    private bool Apply(WiringTask task, Choice choice)
    {
        for (var i = 0; i < choice.Blocks.Length; i++)
        {
            if (!Take(choice.Blocks[i], choice.From, choice.Starts[i], task))
            {
                return false;
            }
        }

        for (var i = 0; i < choice.Slots.Length; i++)
        {
            if (problem.IsBarred[choice.ReceiveSlotOf(i)] || !state.Fill(choice.Slots[i], task.Sources[i]))
            {
                return false;
            }
        }

        if (task.Block is not null)
        {
            foreach (var other in task.SameStream)
            {
                var start = state.StartOf(other.Block!.Id);
                if (start >= 0 && problem.TransmitBlockOf[start] != choice.From.Id)
                {
                    return false;
                }
            }

            for (var position = 0; position < task.Wanted.Length; position++)
            {
                if (task.Kept[position])
                {
                    state.CountChanges(choice.Starts[0] + position, task.Block);
                }
            }
        }
        else if (task.IsKept)
        {
            for (var i = 0; i < choice.Slots.Length; i++)
            {
                state.CountChanges(choice.Slots[i], choice.BlockOf(i));
                state.CountSinks(task.Feeders[i] == choice.ReceiveSlotOf(i) ? 0 : task.Staying.Count);
            }
        }

        return true;
    }

    /// <summary>Subscribes a receive block and checks every position that sounds at an output.</summary>
    private bool Take(ReceiveBlock block, TransmitBlock from, int start, WiringTask task)
    {
        if (!state.Subscribe(block, from, start))
        {
            return false;
        }

        for (var position = 0; position < block.Width; position++)
        {
            var slot = start + position;
            if (!block.IsKept && IsExposed(block, position) && !state.Expose(slot))
            {
                return false;
            }

            var wanted = task.Block == block ? task.Wanted[position] : -1;
            if (wanted >= 0 && !state.Fill(slot, wanted))
            {
                return false;
            }

            foreach (var output in problem.FixedOutputsOf[block.First + position])
            {
                if (problem.BlockOf[output] is { } together && !Array.Exists(together, sink => placed[sink] >= 0))
                {
                    continue;
                }

                if (placed[output] >= 0)
                {
                    if (!state.Fill(slot, placed[output]))
                    {
                        return false;
                    }
                }
                else if (
                    problem.MustBeSilent[output]
                    && !(block.IsKept && StaysAsIs(output, block.First + position))
                    && !(open?[output] ?? false)
                    && !state.Silence(slot, output)
                )
                {
                    return false;
                }
            }
        }

        return true;
    }

    private bool IsExposed(ReceiveBlock block, int position) => !block.IsCarrier && problem.Exposure.IsExposed(problem.Show.Graph, block.First + position);

    /// <summary>True when an output hears a slot whatever is chosen: always, or by a block that is routed so already.</summary>
    private bool StaysAsIs(int output, int slot) => problem.BlockOf[output] is null || problem.Show.Graph.Upstreams[output] == slot;

    private bool FeedsOutputs(ReceiveBlock block)
    {
        for (var position = 0; position < block.Width; position++)
        {
            if (problem.FixedOutputsOf[block.First + position].Length > 0 || IsExposed(block, position) || problem.IsBarred[block.First + position])
            {
                return true;
            }
        }

        return false;
    }

    private WiringPlan Read(List<WiringTask> all, bool isBest)
    {
        var starts = new int[problem.ReceiveBlocks.Length];
        var used = new SortedSet<int>();
        foreach (var block in problem.ReceiveBlocks)
        {
            starts[block.Id] = block.IsKept ? -1 : state.StartOf(block.Id);
            if (starts[block.Id] >= 0)
            {
                used.Add(problem.TransmitBlockOf[starts[block.Id]]);
            }
        }

        var contents = new List<(int Slot, int Source)>();
        var untouched = new List<int>();
        foreach (var block in problem.TransmitBlocks)
        {
            var isShared = block.Bystanders.Exists(bystander => starts[bystander] >= 0);
            for (var slot = block.First; slot < block.First + block.Width; slot++)
            {
                if (!block.IsKept && state.ContentOf(slot) >= 0)
                {
                    contents.Add((slot, state.ContentOf(slot)));
                }
                else if (isShared && state.ContentOf(slot) == WiringState.Undecided && !state.IsOverheard(slot))
                {
                    untouched.Add(slot);
                }
            }
        }

        var routes = new List<(int Slot, int Sink)>();
        foreach (var task in all)
        {
            foreach (var sink in task.Sinks)
            {
                for (var i = 0; i < task.Served.Length; i++)
                {
                    routes.Add((task.Served[i], sink + i));
                }
            }
        }

        return new WiringPlan
        {
            Cost = state.Cost,
            IsBest = isBest,
            Contents = [.. contents],
            Untouched = [.. untouched],
            UsedTransmit = [.. used.Where(id => !problem.TransmitBlocks[id].IsKept)],
            ReceiveStart = starts,
            FreeRoutes = [.. routes],
        };
    }

    private TBlock[][] ByDevice<TBlock>(TBlock[] blocks, Func<TBlock, int> device)
    {
        var byDevice = new TBlock[problem.DeviceCount][];
        for (var index = 0; index < byDevice.Length; index++)
        {
            byDevice[index] = Array.FindAll(blocks, block => device(block) == index);
        }

        return byDevice;
    }
}
