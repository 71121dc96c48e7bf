using RoutingRules.Assignment.Problem;

namespace RoutingRules.Assignment.Wiring;

/// <summary>The subscriptions of a wiring in the making, with contents and links; every change can be taken back.</summary>
internal sealed class WiringState
{
    private const int Rewritten = 0;
    private const int Transmit = 1;
    private const int Receive = 2;

    private readonly AssignmentProblem problem;
    private readonly ChangeTrail trail = new();
    private readonly LinkCrossings links;
    private readonly int[] useCount;
    private readonly int[] network;
    private readonly int[] start;
    private readonly int[] sent;
    private readonly int[] received;
    private readonly int[] subscriptions;

    /// <summary>Slots and blocks that are counted as rewritten already: 1 for those.</summary>
    private readonly int[] slotCounted;
    private readonly int[] blockCounted;
    private readonly int[] totals = new int[3];

    public WiringState(AssignmentProblem problem)
    {
        this.problem = problem;
        Slots = new SlotContents(problem, trail);
        links = new LinkCrossings(problem, trail);
        useCount = new int[problem.TransmitBlocks.Length];
        network = new int[problem.TransmitBlocks.Length];
        Array.Fill(network, -1);
        start = new int[problem.ReceiveBlocks.Length];
        Array.Fill(start, -1);
        sent = new int[problem.DeviceCount];
        received = new int[problem.DeviceCount];
        subscriptions = new int[problem.DeviceCount * problem.TransmitBlocks.Length];
        slotCounted = new int[problem.Show.Graph.PointCount];
        blockCounted = new int[problem.ReceiveBlocks.Length];
        Prepare();
    }

    public SlotContents Slots { get; }

    public WiringCost Cost => new(totals[Rewritten], totals[Transmit], totals[Receive]);

    public int Mark => trail.Mark;

    public int StartOf(int block) => start[block];

    public bool IsUsed(int transmitBlock) => useCount[transmitBlock] > 0;

    /// <summary>Takes back every change since a mark.</summary>
    public void Undo(int mark) => trail.Undo(mark);

    /// <summary>Kept streams stand before any choice.</summary>
    private void Prepare()
    {
        foreach (var block in problem.TransmitBlocks)
        {
            if (block.IsKept)
            {
                useCount[block.Id] = 1;
                network[block.Id] = block.KeptNetwork;
                sent[block.Device] += block.IsHeard ? 1 : 0;
                totals[Transmit] += block.IsHeard ? 1 : 0;
            }
        }

        foreach (var block in problem.ReceiveBlocks)
        {
            if (!block.IsKept)
            {
                continue;
            }

            start[block.Id] = block.InputStart >= 0 ? block.InputStart : -3;
            totals[Receive]++;
            var from = block.InputStart >= 0 ? problem.TransmitBlockOf[block.InputStart] : -1;
            if (from >= 0 && subscriptions[Subscription(block.Device, from)]++ == 0)
            {
                received[block.Device]++;
            }
        }
    }

    private int Subscription(int device, int transmitBlock) => (device * problem.TransmitBlocks.Length) + transmitBlock;

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

            trail.Set(start, block.Id, at);
            return true;
        }

        var wanted = problem.NetworkFrom(from.Device, block.Device);
        if (wanted < 0 || (useCount[from.Id] > 0 && network[from.Id] != wanted))
        {
            return false;
        }

        var subscription = Subscription(block.Device, from.Id);
        if (subscriptions[subscription] == 0)
        {
            if (received[block.Device] >= problem.ReceivedLimit[block.Device])
            {
                return false;
            }

            trail.Set(received, block.Device, received[block.Device] + 1);
            if (!links.Cross(from, wanted, block.Device))
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

            trail.Set(sent, from.Device, sent[from.Device] + 1);
            trail.Set(network, from.Id, wanted);
            trail.Set(totals, Transmit, totals[Transmit] + 1);
        }

        trail.Set(subscriptions, subscription, subscriptions[subscription] + 1);
        trail.Set(useCount, from.Id, useCount[from.Id] + 1);
        trail.Set(start, block.Id, at);
        trail.Set(totals, Receive, totals[Receive] + 1);
        return true;
    }

    /// <summary>Counts changes under a demand that stays: its slot and its receive block.</summary>
    public void CountChanges(int slot, ReceiveBlock block)
    {
        CountSlot(slot);
        if (blockCounted[block.Id] == 0 && block.InputStart != start[block.Id])
        {
            trail.Set(blockCounted, block.Id, 1);
            CountSinks(1);
        }
    }

    /// <summary>Counts the sinks of demands that stay and that take their signal from another point.</summary>
    public void CountSinks(int count)
    {
        if (count > 0)
        {
            trail.Set(totals, Rewritten, totals[Rewritten] + count);
        }
    }

    /// <summary>Counts a transmit slot that is itself a sink of a demand that stays, if it carries something else now.</summary>
    public void CountSlot(int slot)
    {
        if (slotCounted[slot] == 0 && Slots.Changes(slot))
        {
            trail.Set(slotCounted, slot, 1);
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
                if (start[id] == -1 && problem.ReceiveBlocks[id].InputStart is >= 0 and var at && Slots.HasNothingElse(at, problem.ReceiveBlocks[id].Width))
                {
                    trail.Set(start, id, at);
                    fits &= links.Cross(block, network[block.Id], problem.ReceiveBlocks[id].Device);
                }
            }
        }

        return fits;
    }
}
