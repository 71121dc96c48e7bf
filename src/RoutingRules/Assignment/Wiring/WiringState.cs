using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>The contents and subscriptions of a wiring in the making; every change can be taken back.</summary>
internal sealed class WiringState
{
    public const int Undecided = -1;
    public const int Empty = -2;

    /// <summary>Contents of this less a source: the slot is empty or carries that source.</summary>
    private const int OnlyBase = -3;

    private readonly AssignmentProblem problem;
    private readonly int[] upstream;
    private readonly int[] content;
    private readonly int[] useCount;
    private readonly int[] network;
    private readonly int[] start;
    private readonly int[] sent;
    private readonly int[] received;
    private readonly int[] subscriptions;
    private readonly bool[] slotCounted;
    private readonly bool[] blockCounted;
    private readonly int[] slotFixed;
    private readonly bool[] slotClearable;

    /// <summary>Transmit slots that arrive where nothing private may.</summary>
    private readonly int[] exposed;
    private readonly LinkRoom links;
    private readonly int[] crossings;
    private readonly long[] loads;
    private readonly Stack<Change> trail = new();
    private int rewritten;
    private int transmit;
    private int receive;

    private enum Cell : byte
    {
        Content,
        Exposed,
        Use,
        Network,
        Start,
        Sent,
        Received,
        Subscriptions,
        Crossings,
        SlotCounted,
        BlockCounted,
        Rewritten,
        Transmit,
        Receive,
    }

    private readonly record struct Change(Cell Cell, int Index, int Old);

    public WiringState(AssignmentProblem problem)
    {
        this.problem = problem;
        var points = problem.Show.Graph.PointCount;
        upstream = problem.Show.Graph.Upstreams.ToArray();
        content = new int[points];
        Array.Fill(content, Undecided);
        useCount = new int[problem.TransmitBlocks.Length];
        network = new int[problem.TransmitBlocks.Length];
        Array.Fill(network, -1);
        start = new int[problem.ReceiveBlocks.Length];
        Array.Fill(start, -1);
        sent = new int[problem.DeviceCount];
        received = new int[problem.DeviceCount];
        subscriptions = new int[problem.DeviceCount * problem.TransmitBlocks.Length];
        slotCounted = new bool[points];
        blockCounted = new bool[problem.ReceiveBlocks.Length];
        slotFixed = new int[points];
        slotClearable = new bool[points];
        exposed = problem.Exposure.IsAny ? new int[points] : [];
        links = problem.Links;
        crossings = links.Count == 0 ? [] : new int[problem.TransmitBlocks.Length * links.Count];
        loads = [.. links.Staying];
        Prepare();
    }

    public WiringCost Cost => new(rewritten, transmit, receive);

    public int Mark => trail.Count;

    public int ContentOf(int slot) => content[slot];

    public int StartOf(int block) => start[block];

    public bool IsUsed(int transmitBlock) => useCount[transmitBlock] > 0;

    public int InputContent(int slot) => upstream[slot];

    /// <summary>Fixed contents, kept streams and carriers stand before any choice.</summary>
    private void Prepare()
    {
        var graph = problem.Show.Graph;
        foreach (var block in problem.TransmitBlocks)
        {
            for (var slot = block.First; slot < block.First + block.Width; slot++)
            {
                slotFixed[slot] = -2;
                if (graph.FixedSource(new(slot)) is { } always)
                {
                    slotFixed[slot] = always.Value;
                    slotClearable[slot] = graph.IsClearable(new(slot));
                    if (!slotClearable[slot])
                    {
                        content[slot] = always.IsNone ? Empty : always.Value;
                    }
                }

                if (block.IsKept)
                {
                    content[slot] = upstream[slot] < 0 ? Empty : upstream[slot];
                }
            }

            if (block.IsKept)
            {
                useCount[block.Id] = 1;
                network[block.Id] = block.KeptNetwork;
                sent[block.Device] += block.IsHeard ? 1 : 0;
                transmit += block.IsHeard ? 1 : 0;
                for (var at = 0; at < links.Count; at++)
                {
                    var unit = links.UnitOf(block.Id);
                    crossings[(unit * links.Count) + at] = links.IsCrossedByStaying(unit, at) ? 1 : 0;
                }
            }
        }

        foreach (var block in problem.ReceiveBlocks)
        {
            if (!block.IsKept)
            {
                continue;
            }

            start[block.Id] = block.InputStart >= 0 ? block.InputStart : -3;
            receive++;
            var from = block.InputStart >= 0 ? problem.TransmitBlockOf[block.InputStart] : -1;
            if (from >= 0 && subscriptions[(block.Device * problem.TransmitBlocks.Length) + from]++ == 0)
            {
                received[block.Device]++;
            }
        }
    }

    /// <summary>Puts a source into a slot.</summary>
    /// <returns>False when the slot cannot carry it or carries something else.</returns>
    public bool Fill(int slot, int source)
    {
        // A dead or reserved slot carries nothing that anybody depends on, whatever the input has there.
        if (problem.IsBarred[slot])
        {
            return false;
        }

        if (content[slot] == source)
        {
            return true;
        }

        if (slot == source)
        {
            if (content[slot] == Undecided)
            {
                Set(Cell.Content, slot, ref content[slot], upstream[slot] < 0 ? Empty : upstream[slot]);
            }

            return true;
        }

        if ((content[slot] != Undecided && content[slot] != OnlyBase - source) || !CanCarry(slot, source))
        {
            return false;
        }

        return
            slotFixed[slot] == -2
            && problem.Blocks.Find(source, slot) is { } together
            && (together.Size > 1 || problem.Blocks.IsLeftEmpty(together.FirstSink + 1, together.FirstSink, together.FirstSource))
            ? FillTogether(together)
            : Put(slot, source);
    }

    private bool FillTogether((int FirstSink, int FirstSource, int Size) together)
    {
        for (var position = 0; position < together.Size; position++)
        {
            var slot = together.FirstSink + position;
            if (content[slot] != Undecided || problem.TransmitBlockOf[slot] < 0 || !Put(slot, together.FirstSource + position))
            {
                return false;
            }
        }

        for (var slot = together.FirstSink + together.Size; problem.Blocks.IsLeftEmpty(slot, together.FirstSink, together.FirstSource); slot++)
        {
            if (content[slot] is not (Undecided or Empty))
            {
                return false;
            }

            Put(slot, Empty);
        }

        return true;
    }

    private bool Put(int slot, int source)
    {
        if (IsOverheard(slot, source))
        {
            return false;
        }

        Set(Cell.Content, slot, ref content[slot], source);
        return true;
    }

    /// <summary>True when a slot carries nothing yet and may carry a source.</summary>
    public bool IsOpenTo(int slot, int source) =>
        !problem.IsBarred[slot] && (content[slot] == Undecided || content[slot] == OnlyBase - source) && CanCarry(slot, source) && !IsOverheard(slot, source);

    /// <summary>True when what a slot carried in the input would now be heard where nothing private may.</summary>
    public bool IsOverheard(int slot) => IsOverheard(slot, upstream[slot]);

    private bool IsOverheard(int slot, int source) => exposed.Length > 0 && exposed[slot] > 0 && problem.Exposure.IsPrivate(source);

    /// <summary>Lets a slot arrive where nothing private may.</summary>
    /// <returns>False when it carries something private that could have travelled elsewhere.</returns>
    public bool Expose(int slot)
    {
        if (problem.Exposure.IsPrivate(content[slot]) && (slotFixed[slot] < 0 || slotClearable[slot]))
        {
            return false;
        }

        Set(Cell.Exposed, slot, ref exposed[slot], 1);
        return true;
    }

    private bool CanCarry(int slot, int source)
    {
        if (slotFixed[slot] != -2)
        {
            return slotFixed[slot] == source;
        }

        return slot == source
            || problem.Show.Graph.RoutingBetween(new(source), new(slot)) is { Mode: Profiles.RoutingMode.Free }
            || problem.Blocks.Find(source, slot) is not null;
    }

    /// <summary>Demands that a slot carry nothing that sounds at an idle output.</summary>
    /// <returns>False when it carries something that could have been left out.</returns>
    public bool Silence(int slot, int output)
    {
        var carried = content[slot];
        var tolerated = problem.Tolerated[output];
        if (carried is Undecided or <= OnlyBase)
        {
            var only = tolerated < 0 || (carried <= OnlyBase && carried != OnlyBase - tolerated) ? Empty : OnlyBase - tolerated;
            Set(Cell.Content, slot, ref content[slot], only);
            return true;
        }

        var isForced = slotFixed[slot] >= 0 && !slotClearable[slot];
        return carried == Empty || isForced || tolerated == carried;
    }

    /// <summary>Lets a receive block take a run of slots, within limits, on one network, and over links that have room.</summary>
    public bool Subscribe(ReceiveBlock block, TransmitBlock from, int at)
    {
        if (start[block.Id] == at)
        {
            return block.HasWay;
        }

        if (start[block.Id] != -1)
        {
            return false;
        }

        if (from.IsCarrier || block.IsCarrier)
        {
            if (from.CarrierTo != block.Id)
            {
                return false;
            }

            Set(Cell.Start, block.Id, ref start[block.Id], at);
            return true;
        }

        var wanted = problem.NetworkFrom(from.Device, block.Device);
        if (wanted < 0 || (useCount[from.Id] > 0 && network[from.Id] != wanted))
        {
            return false;
        }

        ref var subscribed = ref subscriptions[(block.Device * problem.TransmitBlocks.Length) + from.Id];
        if (subscribed == 0)
        {
            if (received[block.Device] >= problem.ReceivedLimit[block.Device])
            {
                return false;
            }

            Set(Cell.Received, block.Device, ref received[block.Device], received[block.Device] + 1);
            if (!Cross(from, wanted, block.Device))
            {
                return false;
            }
        }

        if (useCount[from.Id] == 0)
        {
            if (sent[from.Device] >= problem.SentLimit[from.Device])
            {
                return false;
            }

            Set(Cell.Sent, from.Device, ref sent[from.Device], sent[from.Device] + 1);
            Set(Cell.Network, from.Id, ref network[from.Id], wanted);
            Set(Cell.Transmit, 0, ref transmit, transmit + 1);
        }

        Set(Cell.Subscriptions, (block.Device * problem.TransmitBlocks.Length) + from.Id, ref subscribed, subscribed + 1);
        Set(Cell.Use, from.Id, ref useCount[from.Id], useCount[from.Id] + 1);
        Set(Cell.Start, block.Id, ref start[block.Id], at);
        Set(Cell.Receive, 0, ref receive, receive + 1);
        return true;
    }

    /// <summary>Takes the stream of a block on to one more receiver.</summary>
    /// <returns>False when a link it did not pass before then carries more than may be reserved.</returns>
    private bool Cross(TransmitBlock from, int on, int receiver)
    {
        if (links.Count == 0)
        {
            return true;
        }

        var fits = true;
        var unit = links.UnitOf(from.Id);
        foreach (var at in links.Crossed(on, from.Device, receiver))
        {
            var index = (unit * links.Count) + at;
            if (crossings[index] == 0)
            {
                loads[at] += links.Rate(unit, at);
                fits &= loads[at] <= links.Most[at];
            }

            Set(Cell.Crossings, index, ref crossings[index], crossings[index] + 1);
        }

        return fits;
    }

    /// <summary>Counts changes under a demand that stays: its slot and its receive block.</summary>
    public void CountChanges(int slot, ReceiveBlock block)
    {
        CountSlot(slot);
        if (!blockCounted[block.Id] && block.InputStart != start[block.Id])
        {
            blockCounted[block.Id] = true;
            trail.Push(new Change(Cell.BlockCounted, block.Id, 0));
            Set(Cell.Rewritten, 0, ref rewritten, rewritten + 1);
        }
    }

    /// <summary>Counts the sinks of demands that stay and that take their signal from another point.</summary>
    public void CountSinks(int count)
    {
        if (count > 0)
        {
            Set(Cell.Rewritten, 0, ref rewritten, rewritten + count);
        }
    }

    /// <summary>Counts a transmit slot that is itself a sink of a demand that stays, if it carries something else now.</summary>
    public void CountSlot(int slot)
    {
        if (!slotCounted[slot] && upstream[slot] != content[slot])
        {
            slotCounted[slot] = true;
            trail.Push(new Change(Cell.SlotCounted, slot, 0));
            CountSinks(1);
        }
    }

    /// <summary>Lets receivers that no demand mentions stay in blocks of the tasks' senders where what they take is not something else now.</summary>
    /// <returns>False when the streams to them overfill a link.</returns>
    public bool AddBystanders(WiringTask[] tasks)
    {
        var fits = true;
        foreach (var block in problem.TransmitBlocks)
        {
            if (
                block.Bystanders.Count == 0
                || useCount[block.Id] == 0
                || block.IsKept
                || network[block.Id] != block.BystanderNetwork
                || !Array.Exists(tasks, task => task.Sender == block.Device)
            )
            {
                continue;
            }

            foreach (var id in block.Bystanders)
            {
                if (start[id] == -1 && problem.ReceiveBlocks[id].InputStart is >= 0 and var at && HasNothingElse(at, problem.ReceiveBlocks[id].Width))
                {
                    Set(Cell.Start, id, ref start[id], at);
                    fits &= Cross(block, network[block.Id], problem.ReceiveBlocks[id].Device);
                }
            }
        }

        return fits;
    }

    /// <summary>True when slots carry what they carry in the input, or nothing that a demand put there.</summary>
    private bool HasNothingElse(int first, int width)
    {
        for (var slot = first; slot < first + width; slot++)
        {
            if (content[slot] >= 0 && content[slot] != upstream[slot])
            {
                return false;
            }
        }

        return true;
    }

    private void Set(Cell cell, int index, ref int value, int to)
    {
        trail.Push(new Change(cell, index, value));
        value = to;
    }

    /// <summary>Takes back every change since a mark.</summary>
    public void Undo(int mark)
    {
        while (trail.Count > mark)
        {
            var change = trail.Pop();
            switch (change.Cell)
            {
                case Cell.Content:
                    content[change.Index] = change.Old;
                    break;
                case Cell.Exposed:
                    exposed[change.Index] = change.Old;
                    break;
                case Cell.Use:
                    useCount[change.Index] = change.Old;
                    break;
                case Cell.Network:
                    network[change.Index] = change.Old;
                    break;
                case Cell.Start:
                    start[change.Index] = change.Old;
                    break;
                case Cell.Sent:
                    sent[change.Index] = change.Old;
                    break;
                case Cell.Received:
                    received[change.Index] = change.Old;
                    break;
                case Cell.Subscriptions:
                    subscriptions[change.Index] = change.Old;
                    break;
                case Cell.Crossings:
                    Uncross(change.Index, change.Old);
                    break;
                case Cell.SlotCounted:
                    slotCounted[change.Index] = false;
                    break;
                case Cell.BlockCounted:
                    blockCounted[change.Index] = false;
                    break;
                case Cell.Rewritten:
                    rewritten = change.Old;
                    break;
                case Cell.Transmit:
                    transmit = change.Old;
                    break;
                default:
                    receive = change.Old;
                    break;
            }
        }
    }

    private void Uncross(int index, int before)
    {
        crossings[index] = before;
        if (before == 0)
        {
            var at = index % links.Count;
            loads[at] -= links.Rate(index / links.Count, at);
        }
    }
}
